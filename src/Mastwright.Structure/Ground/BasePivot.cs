using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Ground;

/// <summary>How the mast stands on its insulator.</summary>
public enum PivotKind
{
    /// <summary>A ball in a cone: free to lean every way, held back by the friction of the ball.</summary>
    BallAndCone,

    /// <summary>A rounded rocker kept in place by a pin: leaning rolls the contact sideways.</summary>
    RockerAndPin,

    /// <summary>A hinge: free one way only.</summary>
    Hinge,
}

/// <summary>What the mast asks of its pivot and insulator, over all cases.</summary>
/// <param name="GreatestCompressionN">Greatest compression, N.</param>
/// <param name="LeastCompressionN">Least compression, N; negative when the mast would lift. A lost guy counts.</param>
/// <param name="StillAirCompressionN">Compression in still air, N.</param>
/// <param name="HorizontalN">Greatest horizontal reaction, N.</param>
/// <param name="RotationRad">Greatest lean of the mast's foot, rad.</param>
/// <param name="GoverningCase">The case of the greatest compression, in words.</param>
/// <param name="LeastCase">The case of the least compression, in words.</param>
public sealed record PivotDuty(
    double GreatestCompressionN, double LeastCompressionN, double StillAirCompressionN, double HorizontalN, double RotationRad, string GoverningCase, string LeastCase)
{
    /// <summary>Greatest lean across the axis of a hinge, rad, which it cannot give way to.</summary>
    public double RotationAcrossHingeRad { get; init; }

    /// <summary>Compression that goes with <see cref="HorizontalN"/>, N; the still-air compression when null.</summary>
    public double? CompressionWithHorizontalN { get; init; }
}

/// <summary>A base insulator with its pivot. Ceramic is strong in compression and weak in tension, so the force must stay within its core.</summary>
/// <param name="Kind">Kind of pivot.</param>
/// <param name="InsulatorUltimateN">Ultimate compression of the insulator, N.</param>
/// <param name="InsulatorHeightM">Height of the insulator, m.</param>
/// <param name="InsulatorDiameterM">Least diameter of its ceramic, m.</param>
public sealed record BasePivot(PivotKind Kind, double InsulatorUltimateN, double InsulatorHeightM, double InsulatorDiameterM)
{
    private const string Caution = "Ceramic breaks without warning: keep people clear while the mast's weight comes onto it, use the maker's rating, and never let the mast bend the insulator.";

    private static readonly Source Page = Source.Derived("docs/theory/footing.md");

    /// <summary>Inside diameter of a hollow insulator, m; 0 when solid.</summary>
    public double InsulatorBoreM { get; init; }

    /// <summary>Radius of the ball, the rocker's curve, or the hinge pin, m.</summary>
    public double RadiusM { get; init; } = 0.02;

    /// <summary>Friction coefficient of ball or pin; 0.15 for greased steel (common practice).</summary>
    public double Friction { get; init; } = 0.15;

    /// <summary>Greatest lean the pivot allows before it binds, rad.</summary>
    public double RotationLimitRad { get; init; } = 5 * Math.PI / 180;

    /// <summary>Breaking strength of the hold-down against lifting, N; 0 when there is none.</summary>
    public double HoldDownN { get; init; }

    /// <summary>Least compression to be kept, as a share of that in still air.</summary>
    public double LeastShare { get; init; } = 0.1;

    /// <summary>Compression, lean, lift-off and bending into the ceramic.</summary>
    /// <param name="part">Which base; goes into the names of the checks.</param>
    /// <param name="duty">What the mast asks.</param>
    /// <param name="factors">Factors of safety.</param>
    public IEnumerable<Check> Examine(string part, PivotDuty duty, GroundFactors factors)
    {
        var n = Trail.Given("greatest compression", "N", duty.GreatestCompressionN, QuantityKind.Force, AnchorPull.FromAnalysis);
        var fs = GroundFactors.Trail("ceramic", factors.Ceramic);
        var rating = Trail.Given("ultimate compression of the insulator", "Nu", InsulatorUltimateN, QuantityKind.Force, InputSource.Design);
        yield return Check.AtMost(
            $"stand.base.insulator[{part}]", Trade.Stand, "Base insulator in compression", n,
            Trail.Computed("allowable compression of the insulator", "Na", InsulatorUltimateN / fs.Value, QuantityKind.Force, "Na = Nu/FS", Source.CommonPractice, rating, fs), duty.GoverningCase,
            "Take a stronger insulator, or lower the guy tension.", Caution);

        yield return Check.AtMost(
            $"stand.base.rotation[{part}]", Trade.Stand, "Lean of the mast's foot on its pivot",
            Trail.Given("greatest lean", "θ", duty.RotationRad, QuantityKind.Angle, AnchorPull.FromAnalysis), Trail.Given("lean the pivot allows", "θmax", RotationLimitRad, QuantityKind.Angle, InputSource.Design), duty.GoverningCase,
            "Stiffen the lowest span, or take a pivot with more freedom.", Caution);

        yield return LiftOff(part, duty, factors);
        yield return Core(part, duty);
        if (Kind == PivotKind.Hinge)
        {
            yield return Check.AtMost(
                $"stand.base.hinge[{part}]", Trade.Stand, "Lean across the hinge",
                Trail.Given("greatest lean across the hinge's axis", "θ", duty.RotationAcrossHingeRad, QuantityKind.Angle, AnchorPull.FromAnalysis),
                Trail.Given("play of a hinge across its axis", "θmax", 0.25 * Math.PI / 180, QuantityKind.Angle, Source.CommonPractice), duty.GoverningCase,
                "Use the hinge only to raise the mast, and let it stand on a ball or rocker.", Caution);
        }
    }

    private Check LiftOff(string part, PivotDuty duty, GroundFactors factors)
    {
        var id = $"stand.base.lift-off[{part}]";
        if (duty.LeastCompressionN < 0)
        {
            var lift = Trail.Given("lift of the mast off its pivot", "U", -duty.LeastCompressionN, QuantityKind.Force, AnchorPull.FromAnalysis);
            var hold = Trail.Given("breaking strength of the hold-down", "R", HoldDownN, QuantityKind.Force, InputSource.Design);
            var fs = GroundFactors.Trail("hold-down", factors.Uplift);
            return Check.AtMost(
                id, Trade.Stand, "Hold-down keeps the mast on its pivot", lift, Trail.Computed("allowable pull of the hold-down", "Ra", HoldDownN / fs.Value, QuantityKind.Force, "Ra = R/FS", Source.CommonPractice, hold, fs), duty.LeastCase,
                "Fit a loose insulated hold-down that lets the pivot move, or raise the guy tension.", Caution);
        }

        var least = Trail.Given("least compression", "Nmin", duty.LeastCompressionN, QuantityKind.Force, AnchorPull.FromAnalysis);
        var still = Trail.Given("compression in still air", "N0", duty.StillAirCompressionN, QuantityKind.Force, AnchorPull.FromAnalysis);
        var share = Trail.Given("share to be kept", "s", LeastShare, QuantityKind.Ratio, Source.CommonPractice, "changeable");
        return Check.AtLeast(
            id, Trade.Stand, "Mast stays down on its pivot", least, Trail.Computed("compression to be kept", "Nk", LeastShare * duty.StillAirCompressionN, QuantityKind.Force, "Nk = s·N0", Source.CommonPractice, share, still), duty.LeastCase,
            "Raise the guy tension, or fit a loose insulated hold-down.", Caution);
    }

    /// <summary>The moment in the ceramic held against the one that would open its edge: N times the core radius (d/8 when solid).</summary>
    private Check Core(string part, PivotDuty duty)
    {
        var n = Trail.Given("compression at the same time", "N", Math.Max(0, duty.CompressionWithHorizontalN ?? duty.StillAirCompressionN), QuantityKind.Force, AnchorPull.FromAnalysis);
        var h = Trail.Given("horizontal reaction", "H", duty.HorizontalN, QuantityKind.Force, AnchorPull.FromAnalysis);
        var height = Trail.Given("height of the insulator", "h", InsulatorHeightM, QuantityKind.FineLength, InputSource.Design);
        var radius = Trail.Given(Kind == PivotKind.RockerAndPin ? "radius of the rocker" : "radius of ball or pin", "r", RadiusM, QuantityKind.FineLength, InputSource.Design);
        var lean = Trail.Given("lean", "θ", duty.RotationRad, QuantityKind.Angle, AnchorPull.FromAnalysis);
        var mu = Trail.Given("friction coefficient", "μ", Friction, QuantityKind.Ratio, Source.CommonPractice, "changeable");
        var pivot = Kind == PivotKind.RockerAndPin
            ? Trail.Computed("moment of the rolled contact", "Mp", n.Value * RadiusM * Math.Abs(duty.RotationRad), QuantityKind.Moment, "Mp = N·r·θ", Page, n, radius, lean)
            : Trail.Computed("moment of friction in the pivot", "Mp", Friction * n.Value * RadiusM, QuantityKind.Moment, "Mp = μ·N·r", Page, mu, n, radius);
        var moment = Trail.Computed("moment in the ceramic", "M", (duty.HorizontalN * InsulatorHeightM) + pivot.Value, QuantityKind.Moment, "M = H·h + Mp", Page, h, height, pivot);
        var (d, bore) = (InsulatorDiameterM, InsulatorBoreM);
        var core = Trail.Computed(
            "core radius of the ceramic", "k", ((d * d) + (bore * bore)) / (8 * d), QuantityKind.FineLength, "k = (d² + d0²)/(8·d)", Source.Literature("mechanics of materials: core of a circle and an annulus"),
            Trail.Given("diameter of the ceramic", "d", d, QuantityKind.FineLength, InputSource.Design), Trail.Given("bore", "d0", bore, QuantityKind.FineLength, InputSource.Design));
        return Check.AtMost(
            $"stand.base.bending[{part}]", Trade.Stand, "No tension in the ceramic", moment,
            Trail.Computed("moment at which the edge of the ceramic opens", "Mk", n.Value * core.Value, QuantityKind.Moment, "Mk = N·k", Page, n, core), duty.GoverningCase,
            "Take a shorter or thicker insulator, a smaller ball or rocker, or carry the horizontal force past the insulator.", Caution);
    }
}
