using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Analysis.Results;
using Mastwright.Catalog;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Numerics;
using Mastwright.Structure.Mast;
using Mastwright.Structure.Solver;

namespace Mastwright.Analysis.Stand;

/// <summary>Draws the checks of a mast from its solved load cases; the worst case of each is named.</summary>
internal sealed class StandChecks
{
    private const string Climbing = "Stored tension, falls and a falling mast kill. Follow local codes and the makers' data, and have a licensed engineer look at any mast that could hurt someone.";

    private static readonly Source Equilibrium = Source.Derived("docs/theory/structure-mast.md");

    private readonly Station station;
    private readonly StandModel model;
    private readonly IReadOnlyList<SolvedCase> solved;
    private readonly IReadOnlyList<SolvedCase> stable;
    private readonly GroundRun ground;
    private readonly IReadOnlyList<GuyLossOutcome> lost;

    public StandChecks(Station station, StandModel model, IReadOnlyList<SolvedCase> solved, IReadOnlyList<GuyLossOutcome> lost)
    {
        this.lost = lost;
        this.station = station;
        this.model = model;
        this.solved = solved;
        stable = [.. solved.Where(s => s.Solution.IsStable)];
        ground = new GroundRun(station, model, stable);
        BaseCompression = Worst("largest compression at the foot", "Rz", QuantityKind.Force, "Rz of the foot's reaction, largest of all cases", s => s.Solution.Foot.ReactionN.Z).Trail;
        GuyTensions = [.. Levels().Select(l => new NamedTrail($"stand.{mast}.guy-tension-level-{l.Number}", Trade.Stand, LevelTension(l.Number).Trail))];
    }

    /// <summary>Patch loads, where the wind method asks for them.</summary>
    public PatchRun.Answer Patches { get; init; } = PatchRun.Answer.None;

    private string mast => model.Mast.Name;

    /// <summary>Largest compression at the foot.</summary>
    public Trail BaseCompression { get; }

    /// <summary>Largest guy tension at each level.</summary>
    public ImmutableArray<NamedTrail> GuyTensions { get; }

    /// <summary>Whether every case finds an equilibrium, and how far beyond the worst one the mast goes.</summary>
    public IEnumerable<Check> Stability(CancellationToken cancellation)
    {
        var unstable = solved.Where(s => !s.Solution.IsStable).ToList();
        var limit = Trail.Given("stability factor asked", "λmin", station.Limits.StabilityFactor, QuantityKind.Ratio, Source.DesignFile);
        double factor;
        string governing;
        if (unstable.Count > 0)
        {
            var first = unstable.MinBy(s => s.Solution.LoadShare)!;
            factor = first.Solution.Outcome == Outcome.Unstable ? first.Solution.LoadShare : 0;
            governing = $"{first.Name}; {unstable.Count} of {solved.Count} cases find no equilibrium";
        }
        else
        {
            // The case that moves the top most is carried on to twice the factor asked; what it reaches is the answer.
            var hardest = solved.MaxBy(s => s.Solution.Nodes.Max(n => n.DisplacementM.Length))!;
            var reach = 2 * station.Limits.StabilityFactor;
            var solution = MastSolver.Solve(model.Structure, Scaled(hardest.Case.Case, reach), null, cancellation);
            factor = solution.IsStable ? reach : solution.LoadShare * reach;
            governing = hardest.Name;
        }

        var reached = Trail.Computed("load factor at which the mast gives way", "λ", factor, QuantityKind.Ratio,
                "largest share of the case's wind and ice under which a stable equilibrium is found", Equilibrium)
            .Within($"searched up to {2 * station.Limits.StabilityFactor:0.##} times the case; material taken as elastic");
        yield return Check.AtLeast($"stand.stability[{mast}]", Trade.Stand, "The mast stays stable under more than the design loads", reached, limit, governing,
            "Raise the initial tension, add a guy level, spread the anchors, or take a stiffer section.", Climbing);
    }

    /// <summary>Every check that needs an equilibrium.</summary>
    public IEnumerable<Check> WhereStable()
    {
        if (stable.Count == 0)
        {
            return [];
        }

        return [.. Guys(), .. Foot(), .. new BaseRun(station, model, stable, lost).Checks(), .. ground.Footing(), .. Anchors(), Tilt(),
            .. new MemberRun(station, model, stable, Patches).Checks(), .. new JointRun(station, model, [.. stable.Select(s => (s.Name, s.Solution))], f => StandRules.Members(station, f)).Checks(), FreeTop()];
    }

    private IEnumerable<Check> Guys()
    {
        foreach (var (number, strand) in Levels())
        {
            var (trail, governing) = LevelTension(number);
            var breaking = strand.Part.Given("breaking strength", "Tb", strand.BreakingN, QuantityKind.Force);
            var factor = StandRules.GuyFactor(station);
            var capacity = Trail.Computed("tension allowed", "T", strand.BreakingN / station.Limits.GuyFactor, QuantityKind.Force, "T = Tb/γ", Source.CommonPractice, breaking, factor);
            yield return Check.AtMost($"stand.guy.strength[{mast}, level {number}]", Trade.Stand, "Guy strand strength", trail, capacity, governing,
                "Take a stronger strand, move the anchors out, or lower the initial tension.", Climbing);
        }
    }

    private IEnumerable<Check> Foot()
    {
        var insulator = Catalogue.Default.BaseInsulators[model.Mast.Base.Insulator];
        var rated = insulator.Given("rated compression", "Fr", insulator.CompressionN, QuantityKind.Force);
        var factor = Trail.Given("insulator factor", "γ", station.Limits.InsulatorFactor, QuantityKind.Ratio, Source.DesignFile);
        var (compression, pressing) = Worst("largest compression at the foot", "Rz", QuantityKind.Force, "Rz of the foot's reaction, largest of all cases", s => s.Solution.Foot.ReactionN.Z);
        yield return Check.AtMost($"stand.base.compression[{mast}]", Trade.Stand, "Base insulator in compression", compression,
            Trail.Computed("compression allowed", "F", insulator.CompressionN / station.Limits.InsulatorFactor, QuantityKind.Force, "F = Fr/γ", Source.CommonPractice, rated, factor),
            pressing, "Take a stronger insulator, or lower the initial tension.", Climbing);

        var (tilt, tilting) = Worst("rotation at the foot", "θ", QuantityKind.Angle, "angle of the mast's lower end from plumb, largest of all cases", s => s.Solution.Foot.TiltRad);
        yield return Check.AtMost($"stand.base.pivot[{mast}]", Trade.Stand, "The pivot turns without bending the insulator", tilt,
            Trail.Given("rotation the pivot takes", "θmax", model.Mast.Base.PivotRotationRad, QuantityKind.Angle, Source.DesignFile), tilting,
            "Use a pivot that turns further, or stiffen the lowest span.", Climbing);
    }

    /// <summary>Largest pull on each anchor that holds a guy, N; empty without an equilibrium.</summary>
    public IReadOnlyDictionary<string, double> AnchorPullsN => stable.Count == 0 ? new Dictionary<string, double>() : model.Mast.Anchors
        .Select(a => (a.Name, Guys: model.Guys.Where(g => g.Anchor.Name == a.Name).Select(g => g.Guy.Name).ToHashSet()))
        .Where(a => a.Guys.Count > 0)
        .ToDictionary(a => a.Name, a => stable.Max(s => PullOf(s, a.Guys).Length));

    private IEnumerable<Check> Anchors()
    {
        foreach (var anchor in model.Mast.Anchors)
        {
            var names = model.Guys.Where(g => g.Anchor.Name == anchor.Name).Select(g => g.Guy.Name).ToHashSet();
            if (names.Count == 0)
            {
                continue;
            }

            var (pull, governing) = Worst("largest pull on the anchor", "P", QuantityKind.Force, "P = |Σ pull of its guys|, largest of all cases",
                s => PullOf(s, names).Length);
            var id = $"stand.anchor.pull[{mast}, {anchor.Name}]";
            if (ground.Anchor(anchor, AnchorForce(names, governing), governing) is { } kind)
            {
                foreach (var check in kind)
                {
                    yield return check;
                }

                if (anchor.RatedPullN is null)
                {
                    continue;
                }
            }

            if (anchor.RatedPullN is not { } rated)
            {
                yield return new Check(id, Trade.Stand, "Anchor pull", pull, Trail.Given("rated pull", "Pr", 0, QuantityKind.Force, Source.DesignFile, "not stated"),
                    0, Verdict.Unknown, governing, "State “rated-pull” from its maker or a pull test in this very soil, or describe the anchor as block, deadman, screw, rock-bar or post.", Climbing);
                continue;
            }

            var factor = Trail.Given("anchor factor", "γ", station.Limits.AnchorFactor, QuantityKind.Ratio, Source.DesignFile);
            var capacity = Trail.Computed("pull allowed", "Pa", rated / station.Limits.AnchorFactor, QuantityKind.Force, "Pa = Pr/γ", Source.CommonPractice,
                Trail.Given("rated pull", "Pr", rated, QuantityKind.Force, Source.DesignFile), factor);
            yield return Check.AtMost(id, Trade.Stand, "Anchor pull", pull, capacity, governing, "Use a stronger anchor, or move it farther out.", Climbing);
        }
    }

    private Vec3 AnchorForce(HashSet<string> guys, string governing) => PullOf(stable.First(s => s.Name == governing), guys);

    private static Vec3 PullOf(SolvedCase solved, HashSet<string> guys) =>
        solved.Solution.Guys.Where(g => guys.Contains(g.Name)).Aggregate(Vec3.Zero, (sum, g) => sum + g.ForceOnAnchorN);

    private Check Tilt()
    {
        var (tilt, governing) = Worst("largest tilt of the mast", "θ", QuantityKind.Angle, "angle of the deformed axis from plumb, largest over the height and all cases",
            s => s.Solution.Nodes.Max(n => n.TiltRad));
        return Check.AtMost($"stand.tilt[{mast}]", Trade.Stand, "Tilt of the mast under load", tilt,
            Trail.Given("tilt allowed", "θmax", station.Limits.TiltRad, QuantityKind.Angle, Source.DesignFile), governing,
            "Raise the initial tension, or take a stiffer section or strand.");
    }

    // A long unguyed top is no failure by itself: strength and tilt judge it. But gusts find it, and the usual methods leave it out.
    private Check FreeTop()
    {
        var heights = model.Guys.Select(g => g.Guy.AttachmentHeightM).Distinct().Order().ToList();
        var below = heights[^1] - (heights.Count > 1 ? heights[^2] : 0);
        var free = Trail.Computed("mast above its highest guys", "lf", model.Structure.HeightM - heights[^1], QuantityKind.Length, "lf = top - highest guys", Source.DesignFile);
        var span = Trail.Computed("span below them", "ls", below, QuantityKind.Length, "ls = distance to the guys below, or to the foot", Source.DesignFile);
        var check = Check.AtMost($"stand.mast.free-top[{mast}]", Trade.Stand, "Unguyed top is short against the span below", free,
            Trail.Computed("free top allowed", "lmax", below / 2, QuantityKind.Length, "lmax = ls/2", Source.FromMemory("EN 1993-3-1 annex B.3.2.1: cantilever less than half the span below, for the static methods", "2006"), span), "geometry",
            "Guy the mast nearer to its top: a long free top whips in gusts and the static methods no longer cover it.", Climbing);
        return StandRules.Screen(check);
    }

    private IEnumerable<(int Number, GuyStrand Strand)> Levels() => model.Guys.Select(g => (g.Level, g.Strand)).DistinctBy(g => g.Level);

    private (Trail Trail, string Governing) LevelTension(int number)
    {
        var names = model.Guys.Where(g => g.Level == number).Select(g => g.Guy.Name).ToHashSet();
        var first = model.Guys.First(g => g.Level == number);
        var (trail, governing) = Worst($"largest tension of the guys at level {number}", "T", QuantityKind.Force,
            "larger end tension of the elastic catenary, largest of its guys and of all cases", s => s.Solution.Guys.Where(g => names.Contains(g.Name)).Max(g => g.LargestTensionN));
        var initial = Trail.Given("initial tension at the anchor", "T0", first.Guy.Setting.Value, QuantityKind.Force, Source.DesignFile);
        var stiffness = Trail.Computed("axial stiffness of the strand", "EA", first.Guy.Cable.AxialStiffnessN, QuantityKind.Force, "EA = E·A", first.Strand.Part.Source);
        return (trail with { Inputs = [.. trail.Inputs, initial, stiffness] }, governing);
    }

    // The worst of all stable cases, with the wind that made it among the inputs.
    private (Trail Trail, string Governing) Worst(string name, string symbol, QuantityKind kind, string formula, Func<SolvedCase, double> value)
    {
        if (stable.Count == 0)
        {
            return (Trail.Computed(name, symbol, 0, kind, formula, Equilibrium).Within("a stable mast", "No case finds an equilibrium, so there is no such figure."), "no equilibrium");
        }

        var worst = stable.MaxBy(value)!;
        var s = worst.Solution;
        var inputs = new List<Trail>
        {
            Trail.Given("temperature of the case", "t", worst.Case.Case.TemperatureK, QuantityKind.Temperature, Source.DesignFile),
            Trail.Computed("out-of-balance force over the load", "r", s.RelativeResidual, QuantityKind.Ratio, "largest residual of the equilibrium", Equilibrium),
        };
        if (worst.Case.WindPerM is { } wind)
        {
            inputs.Add(wind);
        }

        return (Trail.Computed(name, symbol, value(worst), kind, formula, Equilibrium, [.. inputs])
            .Within("elastic material, static loads, round or latticed mast with equal stiffness all round")
            .Remark(string.Create(CultureInfo.InvariantCulture, $"governing case: {worst.Name}; {stable.Count} of {solved.Count} cases solved")), worst.Name);
    }

    private static LoadCase Scaled(LoadCase c, double k) => c with
    {
        Name = $"{k:0.##} × {c.Name}",
        MastLoads = [.. c.MastLoads.Select(l => new LineLoad([.. l.Points.Select(p => p with { LoadNPerM = k * p.LoadNPerM })]))],
        GuyLoads = [.. c.GuyLoads.Select(g => g with { LoadNPerM = k * g.LoadNPerM })],
        PointLoads = [.. c.PointLoads.Select(p => p with { ForceN = k * p.ForceN, MomentNm = k * p.MomentNm })],
    };
}
