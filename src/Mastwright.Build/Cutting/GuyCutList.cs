using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Model.Trails;
using Mastwright.Numerics;

namespace Mastwright.Build.Cutting;

/// <summary>A guy to be cut.</summary>
/// <param name="Guy">Name of the guy.</param>
/// <param name="AnchorPin">Anchor's pin, metres, z up; uneven ground is in its height.</param>
/// <param name="MastPin">Mast's pin with the mast plumb.</param>
/// <param name="Chain">Links from the anchor to the mast; at least one strand without a given length.</param>
/// <param name="AnchorTension">Tension wanted at the anchor in calm air at the set temperature.</param>
/// <param name="SetTemperatureK">Temperature for which the tension is wanted.</param>
/// <param name="CuttingTemperatureK">Temperature of the strand while it is measured and cut.</param>
/// <param name="ConstructionStretch">Lasting stretch of new strand under its first load, as a fraction; 0 for pre-stretched strand.</param>
public sealed record GuyToCut(
    string Guy,
    Vec3 AnchorPin,
    Vec3 MastPin,
    ImmutableArray<GuyLink> Chain,
    Trail AnchorTension,
    double SetTemperatureK,
    double CuttingTemperatureK,
    double ConstructionStretch = 0);

/// <summary>One piece of strand to cut.</summary>
/// <param name="Guy">The guy it belongs to.</param>
/// <param name="Piece">Name of the piece.</param>
/// <param name="Unstressed">Unstressed length between bearing points at the set temperature.</param>
/// <param name="CutLength">Length to cut, lying without tension at the cutting temperature, allowances included.</param>
/// <param name="LowerMarkM">Distance from the lower end of the cut piece to the lower bearing point.</param>
/// <param name="UpperMarkM">Distance from the lower end of the cut piece to the upper bearing point.</param>
public sealed record PieceCut(string Guy, string Piece, Trail Unstressed, Trail CutLength, double LowerMarkM, double UpperMarkM);

/// <summary>The cut list of one guy.</summary>
/// <param name="Guy">The guy.</param>
/// <param name="Pieces">Its strand pieces from the anchor up.</param>
/// <param name="StrandTotal">Total length of strand to cut.</param>
/// <param name="TensionPerMillimetre">How much a millimetre cut too short raises the tension: why the turnbuckle must have travel to spare.</param>
public sealed record GuyCutList(string Guy, ImmutableArray<PieceCut> Pieces, Trail StrandTotal, Trail TensionPerMillimetre)
{
    private static readonly Source Shape = Source.Derived("reel-cutting.md");

    /// <summary>Works out the list, or says why no list exists.</summary>
    public static Reading<GuyCutList> For(GuyToCut guy)
    {
        if (Fault(guy) is { } fault) return new(null, [fault]);
        var chain = new LinkedGuy(guy.Chain, guy.AnchorPin, guy.MastPin);
        if (chain.LengthsFor(guy.AnchorTension.Value) is not { } lengths || lengths.Any(l => l <= 0))
        {
            return new(null, [new("guy-no-room", Severity.Error, string.Create(CultureInfo.InvariantCulture, $"Guy {guy.Guy} cannot be made: its pins are {chain.ChordM:0.000} m apart and nothing is left for strand after the fittings and given pieces, or the tension is too low to hold it up."), null, chain.ChordM.ToString("0.000", CultureInfo.InvariantCulture), null, "Shorten the fittings or given pieces, or raise the tension.")]);
        }
        var warmer = guy.CuttingTemperatureK - guy.SetTemperatureK;
        var temperature = Trail.Given("cutting less set temperature", "ΔT", warmer, QuantityKind.TemperatureDifference, Source.DesignFile);
        var stretch = Trail.Given("lasting stretch of new strand", "e", guy.ConstructionStretch, QuantityKind.Ratio, Source.DesignFile);
        var pieces = guy.Chain.OfType<StrandLink>().Zip(lengths, Cut).ToImmutableArray();
        var total = Trail.Computed($"strand for guy {guy.Guy}", "ΣLc", pieces.Sum(p => p.CutLength.Value), QuantityKind.Length, "ΣLc", Shape, [.. pieces.Select(p => p.CutLength)]);

        // One millimetre shorter in the pieces that share what is left, and one longer.
        var rest = guy.Chain.OfType<StrandLink>().Zip(lengths).Where(p => p.First.UnstressedM is null).Sum(p => p.Second);
        var up = chain.TensionOf(chain.Lengths(rest - 1e-3));
        var down = chain.TensionOf(chain.Lengths(rest + 1e-3));
        if (up is null || down is null) return new(null, [new("guy-slack", Severity.Error, $"Guy {guy.Guy} hangs so slack at this tension that its length cannot be fixed.", null, null, null, "Raise the tension.")]);
        var sensitivity = Trail.Computed("tension gained for each millimetre", "dT/dL", (up.Value - down.Value) / 2e-3, QuantityKind.Stiffness, "dT/dL = (T(L0 − 1 mm) − T(L0 + 1 mm))/2 mm", Shape, guy.AnchorTension)
            .Remark("shown per metre of length: a thousandth of it is the newtons for a millimetre");
        return new(new(guy.Guy, pieces, total, sensitivity), []);

        PieceCut Cut(StrandLink piece, double length)
        {
            var unstressed = Trail.Computed($"unstressed length of {piece.Name}", "L0", length, QuantityKind.Length, "chain of elastic catenaries and rigid fittings between the pins with tension Ta at the anchor", Shape, guy.AnchorTension);
            var lying = length * (1 + (piece.ExpansionPerK * warmer)) / (1 + guy.ConstructionStretch);
            var cut = Trail.Computed($"cut length of {piece.Name}", "Lc", lying + piece.LowerAllowanceM + piece.UpperAllowanceM, QuantityKind.Length, "Lc = L0 (1 + α ΔT)/(1 + e) + a1 + a2", Shape,
                unstressed,
                Trail.Given("thermal expansion", "α", piece.ExpansionPerK, QuantityKind.ThermalExpansion, Source.DesignFile),
                temperature,
                stretch,
                Trail.Given("allowance at the lower end", "a1", piece.LowerAllowanceM, QuantityKind.Length, Source.DesignFile),
                Trail.Given("allowance at the upper end", "a2", piece.UpperAllowanceM, QuantityKind.Length, Source.DesignFile));
            return new(guy.Guy, piece.Name, unstressed, cut, piece.LowerAllowanceM, piece.LowerAllowanceM + lying);
        }
    }

    /// <summary>Tension at the anchor that a chain with given unstressed strand lengths (from the anchor up) comes to; null when slack.</summary>
    public static double? TensionOf(GuyToCut guy, ImmutableArray<double> unstressedM) =>
        new LinkedGuy(guy.Chain, guy.AnchorPin, guy.MastPin).TensionOf(unstressedM);

    private static Finding? Fault(GuyToCut guy)
    {
        var strands = guy.Chain.OfType<StrandLink>().ToList();
        if (strands.All(s => s.UnstressedM is not null))
            return new("guy-no-free-strand", Severity.Error, $"Every strand of guy {guy.Guy} has a given length, so none is left to make it fit.", null, null, "at least one strand without a given length", "Leave the length of one piece open.");
        foreach (var s in strands)
        {
            if (!(s.WeightNPerM > 0) || !(s.AxialStiffnessN > 0) || !(s.Share > 0) || s.UnstressedM is <= 0 || s.LowerAllowanceM < 0 || s.UpperAllowanceM < 0)
                return new("strand-bad", Severity.Error, $"Strand {s.Name} of guy {guy.Guy} has a weight, stiffness, share, length or allowance that cannot be.", null, s.Name, "weight, stiffness, share and length above 0, allowances not below 0", "Correct the piece.");
        }
        foreach (var f in guy.Chain.OfType<FittingLink>())
            if (!(f.LengthM >= 0) || !(f.MassKg >= 0)) return new("fitting-bad", Severity.Error, $"Fitting {f.Name} of guy {guy.Guy} has a negative length or mass.", null, f.Name, "0 and above", "Correct the fitting.");
        if (!(guy.AnchorTension.Value > 0)) return new("tension-bad", Severity.Error, $"The tension of guy {guy.Guy} cannot be used.", null, guy.AnchorTension.Value.ToString(CultureInfo.InvariantCulture), "above 0 N", "Enter the tension wanted.");
        return null;
    }
}
