using System.Collections.Immutable;
using Mastwright.Analysis.Stand;
using Mastwright.Build.Cutting;
using Mastwright.Catalog;
using Mastwright.Model.Design;
using Mastwright.Structure.Mast;
using Mastwright.Structure.Solver;

namespace Mastwright.Report.Sheets;

/// <summary>A guy as it will be made: fittings and strand pieces between the pins of the standing mast.</summary>
public static class GuyMakeUp
{
    private const double GravityMPerS2 = 9.80665;

    /// <summary>Stands for a fitting in the solver: so stiff that it does not stretch.</summary>
    private const double RigidN = 2e8;

    /// <summary>The guy to cut, with the mast's pin where it is when the mast stands under its guys.</summary>
    public static GuyToCut Of(StandingGuys standing, ModelGuy guy)
    {
        var level = standing.Mast.Guys[guy.Level - 1];
        var pin = guy.Guy.AnchorM + standing.Still.Guy(guy.Guy.Name).ChordM;
        var site = standing.Station.Site;
        return new GuyToCut(guy.Guy.Name, guy.Guy.AnchorM, pin, Links(standing.Mast, level, guy.Strand), standing.Wanted(guy), site.TensioningTemperatureK, site.CuttingTemperatureK ?? site.TensioningTemperatureK);
    }

    /// <summary>Length of a shackle inside, m.</summary>
    public static double ShackleM(GuyHardware hardware) => GuyChains.ShackleM(hardware);

    /// <summary>Length of a turnbuckle between its pins at the opening it is set to, m.</summary>
    public static double TurnbuckleM(GuyHardware hardware) => GuyChains.TurnbuckleM(hardware);

    /// <summary>Tension at the anchor that the whole mast's solver gives for every guy made from these lengths.</summary>
    /// <param name="standing">The mast.</param>
    /// <param name="cuts">The guys with their unstressed strand lengths from the anchor up.</param>
    public static IReadOnlyDictionary<string, double> SolvedFrom(StandingGuys standing, IReadOnlyList<(GuyToCut Guy, ImmutableArray<double> UnstressedM)> cuts)
    {
        var pieces = cuts.ToDictionary(c => c.Guy.Guy, c => Pieces(c.Guy.Chain, c.UnstressedM));
        var mast = standing.Model.Structure with
        {
            Guys = [.. standing.Model.Structure.Guys.Select(g => pieces.TryGetValue(g.Name, out var p) ? g with { Pieces = p, Setting = GuySetting.OfLength(p.Sum(x => x.LengthM)) } : g)],
        };
        var still = new Structure.Mast.LoadCase("still air", mast.InstallationTemperatureK);
        var solution = MastSolver.Solve(mast, still);
        return solution.IsStable ? solution.Guys.ToDictionary(g => g.Name, g => g.AnchorTensionN) : new Dictionary<string, double>();
    }

    private static ImmutableArray<GuyLink> Links(Mast mast, GuyLevel level, GuyStrand strand)
    {
        var insulator = Catalogue.Default.StrainInsulators[level.Insulator];

        // The loops of an egg interlock, so that it adds no length; a rod adds its own.
        var length = insulator.Kind.Contains("egg", StringComparison.OrdinalIgnoreCase) ? 0 : insulator.LengthM;
        var top = level.Hardware is { } h ? ShackleM(h) : 0;
        var places = GuyPlaces.InsulatorsM(mast, level);
        var turnBack = Allowance(level.Hardware, strand);
        StrandLink Piece(int number, double? unstressed) => new($"piece {number}", strand.MassKgPerM * GravityMPerS2, strand.AreaM2 * strand.ModulusPa, strand.ExpansionPerK, unstressed, 1, turnBack, turnBack);

        // From the mast down, then turned round: the list wants the anchor first.
        var list = new List<GuyLink>();
        if (level.Hardware is not null)
        {
            list.Add(new FittingLink("shackle at the mast", top, 0));
        }

        var from = top;
        for (var i = 0; i < places.Count; i++)
        {
            list.Add(Piece(i + 1, Math.Max(0.05, places[i] - (length / 2) - from)));
            list.Add(new FittingLink(insulator.Name, length, insulator.MassKg));
            from = places[i] + (length / 2);
        }

        list.Add(Piece(places.Count + 1, null));
        if (level.Hardware is { } fitted)
        {
            list.Add(new FittingLink(fitted.Turnbuckle, TurnbuckleM(fitted), 0));
            list.Add(new FittingLink("shackle at the anchor", ShackleM(fitted), 0));
        }

        list.Reverse();
        return [.. list];
    }

    private static double Allowance(GuyHardware? hardware, GuyStrand strand) => hardware?.EndFitting == StrandEnd.Clips
        ? Catalogue.Default.Clips.All.Where(c => c.RopeM >= strand.DiameterM - 1e-6).MinBy(c => c.RopeM)?.TurnBackM ?? 0.4
        : 0;

    private static List<GuyPiece> Pieces(ImmutableArray<GuyLink> chain, ImmutableArray<double> unstressedM)
    {
        var list = new List<GuyPiece>();
        var strand = 0;
        foreach (var link in chain)
        {
            switch (link)
            {
                case StrandLink s:
                    list.Add(new GuyPiece(s.Name, unstressedM[strand++], s.AxialStiffnessN, s.WeightNPerM, s.ExpansionPerK));
                    break;
                case FittingLink { LengthM: > 1e-6 } f:
                    list.Add(new GuyPiece(f.Name, f.LengthM, RigidN, f.MassKg * GravityMPerS2 / f.LengthM));
                    break;
                case FittingLink f when list.Count > 0:
                    list[^1] = list[^1] with { EndWeightN = list[^1].EndWeightN + (f.MassKg * GravityMPerS2) };
                    break;
            }
        }

        return list;
    }
}
