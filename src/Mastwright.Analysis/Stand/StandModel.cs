using System.Collections.Immutable;
using Mastwright.Catalog;
using Mastwright.Model.Design;
using Mastwright.Numerics;
using Mastwright.Structure.Loads;
using Mastwright.Structure.Mast;

namespace Mastwright.Analysis.Stand;

/// <summary>The data of a guy's strand or rope that the structure needs.</summary>
/// <param name="Name">Catalogue name.</param>
/// <param name="BreakingN">Breaking strength.</param>
/// <param name="AreaM2">Area.</param>
/// <param name="ModulusPa">Modulus.</param>
/// <param name="DiameterM">Diameter.</param>
/// <param name="MassKgPerM">Mass per metre.</param>
/// <param name="ExpansionPerK">Thermal expansion.</param>
/// <param name="Part">The catalogue row.</param>
public sealed record GuyStrand(string Name, double BreakingN, double AreaM2, double ModulusPa, double DiameterM, double MassKgPerM, double ExpansionPerK, Part Part);

/// <summary>One guy of the model with where it came from in the design.</summary>
/// <param name="Guy">The guy as the solver sees it.</param>
/// <param name="Level">Number of its level, from 1.</param>
/// <param name="Anchor">Its anchor.</param>
/// <param name="Strand">Its strand.</param>
public sealed record ModelGuy(Guy Guy, int Level, Anchor Anchor, GuyStrand Strand);

/// <summary>A mast ready for the solver, with the links back to the design.</summary>
/// <param name="Mast">The design's mast.</param>
/// <param name="Structure">The solver's mast.</param>
/// <param name="Runs">Its runs.</param>
/// <param name="Guys">Its guys.</param>
public sealed record StandModel(Mast Mast, GuyedMast Structure, IReadOnlyList<MastRun> Runs, ImmutableArray<ModelGuy> Guys)
{
    private const double GravityMPerS2 = 9.80665;

    /// <summary>Builds it.</summary>
    public static StandModel Of(Station station, Mast mast)
    {
        var runs = MastSections.Of(mast);
        var guys = mast.Guys.SelectMany((level, l) => AnchorsOf(mast, level).Select(a => GuyOf(mast, level, l + 1, a))).ToImmutableArray();
        var structure = new GuyedMast(
            FootOf(mast),
            [.. runs.Select(r => new MastSegment(r.Name, r.BottomM, r.TopM, r.Properties.AxialStiffness.Value, r.Properties.BendingStiffness.Value,
                r.Properties.TorsionStiffness.Value, (r.MassKgPerM + ConduitKgPerM(mast, r)) * GravityMPerS2, r.ExpansionPerK, r.Properties.ShearStiffness.Value))],
            [.. guys.Select(g => g.Guy)],

            // Guys that meet on the axis give no hold against twist; nothing twists the mast then but friction at the foot.
            mast.Base.Pivot == Pivot.BallAndCone && mast.Guys.Any(g => g.AttachmentRadiusM > 0) ? FootFixity.Ball : FootFixity.PivotTwistHeld,
            station.Site.TensioningTemperatureK)
        {
            Weights = [.. Weights(mast)],
        };
        return new StandModel(mast, structure, runs, guys);
    }

    /// <summary>The anchors a level goes to.</summary>
    public static IEnumerable<Anchor> AnchorsOf(Mast mast, GuyLevel level) =>
        level.Anchors.IsEmpty ? mast.Anchors : mast.Anchors.Where(a => level.Anchors.Contains(a.Name));

    /// <summary>The lower end of the mast, x east, y north, z above the ground at the foot.</summary>
    public static Vec3 FootOf(Mast mast) => new(mast.EastM, mast.NorthM, mast.Base.HeightM);

    /// <summary>The eye of an anchor in the same coordinates.</summary>
    public static Vec3 EyeOf(Mast mast, Anchor anchor) => new(
        mast.EastM + (anchor.DistanceM * Math.Sin(anchor.BearingRad)), mast.NorthM + (anchor.DistanceM * Math.Cos(anchor.BearingRad)), anchor.RiseM);

    /// <summary>The strand or rope of a catalogue name.</summary>
    public static GuyStrand StrandOf(string name)
    {
        if (Catalogue.Default.Strands.Find(name).Part is { } s)
        {
            return new GuyStrand(s.Name, s.BreakingN, s.MetallicAreaM2, s.ModulusPa, s.DiameterM, s.MassPerLengthKgPerM, s.ExpansionPerK, s);
        }

        var r = Catalogue.Default.Ropes[name];
        return new GuyStrand(r.Name, r.BreakingN, r.AreaM2, r.ModulusPa, r.DiameterM, r.MassPerLengthKgPerM, r.ExpansionPerK, r);
    }

    /// <summary>What runs up the mast beside it at a height above the foot.</summary>
    internal ImmutableArray<Alongside> AlongAt(double aboveFootM) =>
        [.. Mast.Conduits.Where(c => aboveFootM <= (c.UpToM ?? Mast.TopM) - Mast.Base.HeightM + 1e-9).Select(c => new Alongside(c.Name, c.DiameterM))];

    // A conduit that ends within a run is spread over it.
    private static double ConduitKgPerM(Mast mast, MastRun run) => mast.Conduits.Sum(c =>
        c.MassKgPerM * Math.Clamp(((c.UpToM ?? mast.TopM) - mast.Base.HeightM - run.BottomM) / (run.TopM - run.BottomM), 0, 1));

    private static ModelGuy GuyOf(Mast mast, GuyLevel level, int number, Anchor anchor)
    {
        var strand = StrandOf(level.Strand);
        var insulator = Catalogue.Default.StrainInsulators[level.Insulator];
        var height = level.HeightM - mast.Base.HeightM;
        var length = (FootOf(mast) + (height * Vec3.Up) - EyeOf(mast, anchor)).Length;
        var insulators = Math.Max(1, level.InsulatorsAtM.Length) * insulator.MassKg / length;
        var cable = new GuyCable(strand.AreaM2, strand.ModulusPa, strand.DiameterM, (strand.MassKgPerM + insulators) * GravityMPerS2, strand.ExpansionPerK);
        var guy = new Guy($"level {number} to {anchor.Name}", EyeOf(mast, anchor), height, cable,
            GuySetting.OfAnchorTension(level.InitialTension.For(strand.BreakingN)), level.AttachmentRadiusM);
        return new ModelGuy(guy, number, anchor, strand);
    }

    private static IEnumerable<LumpedWeight> Weights(Mast mast)
    {
        foreach (var thing in mast.Attachments)
        {
            yield return new LumpedWeight(thing.Name, Math.Clamp(thing.HeightM - mast.Base.HeightM, 0, mast.LengthM), thing.MassKg * GravityMPerS2);
        }

        foreach (var part in TopParts.Of(mast))
        {
            yield return new LumpedWeight(part.Name, mast.LengthM, part.MassKg * GravityMPerS2);
        }

        if (mast.TopWires is { PartOfGuys: false } wires)
        {
            var area = Math.PI / 4 * wires.WireDiameterM * wires.WireDiameterM;
            yield return new LumpedWeight("top wires", mast.LengthM, wires.Count * wires.LengthM * area * TopParts.CopperKgPerM3 * GravityMPerS2);
        }
    }
}
