using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Ground;

/// <summary>What the mast asks of its footing.</summary>
/// <param name="DownN">Downward force, N; negative when the mast lifts.</param>
/// <param name="HorizontalN">Horizontal force, N, not negative.</param>
/// <param name="GoverningCase">The case, in words.</param>
public sealed record FootingDuty(double DownN, double HorizontalN, string GoverningCase);

/// <summary>A concrete footing under the mast: bearing with eccentricity, sliding, tipping, and frost.</summary>
/// <param name="LengthM">Length along the horizontal force (the shorter side is the safe choice), m.</param>
/// <param name="WidthM">Width across it, m.</param>
/// <param name="HeightM">Height from bottom to where the mast stands, m.</param>
/// <param name="BottomDepthM">Depth of the bottom below ground, m.</param>
public sealed record BaseFooting(double LengthM, double WidthM, double HeightM, double BottomDepthM)
{
    /// <summary>Unit weight of the concrete, N/m³.</summary>
    public double ConcreteNPerM3 { get; init; } = 23.5e3;

    /// <summary>Cylinder strength of the concrete, Pa; null when the footing's own bending is not to be checked.</summary>
    public double? ConcretePa { get; init; }

    /// <summary>Width of what stands on it (base plate or pier), m.</summary>
    public double LoadedWidthM { get; init; }

    /// <summary>Everything that must hold for one duty and a frost depth.</summary>
    /// <param name="part">Which footing; goes into the names of the checks.</param>
    /// <param name="soil">The soil.</param>
    /// <param name="duty">What the mast asks.</param>
    /// <param name="frostDepthM">Depth that frost reaches, m; null when not known.</param>
    /// <param name="factors">Factors of safety.</param>
    public IEnumerable<Check> Examine(string part, Soil soil, FootingDuty duty, double? frostDepthM, GroundFactors factors)
    {
        var state = new State(this, duty, soil);
        yield return Bearing(part, soil, duty, factors, state);
        yield return Sliding(part, soil, duty, factors, state);
        yield return Tipping(part, soil, duty, factors, state);
        if (ConcretePa is { } strength)
        {
            yield return PlainConcrete(part, strength, duty, state);
        }

        if (frostDepthM is { } frost)
        {
            yield return Check.AtLeast(
                $"stand.footing.frost[{part}]", Trade.Stand, "Footing is below the frost", Trail.Given("depth of the bottom", "D", BottomDepthM, QuantityKind.Length, InputSource.Design),
                Trail.Given("frost depth", "Df", frost, QuantityKind.Length, InputSource.Design), "winter", "Set the footing deeper, or on gravel that drains below the frost.", soil.Caution);
        }
    }

    private Check Bearing(string part, Soil soil, FootingDuty duty, GroundFactors factors, State s)
    {
        var id = $"stand.footing.bearing[{part}]";
        const string title = "Soil under the footing";
        const string cure = "Make the footing wider, or set it deeper on better ground.";
        var q = s.GreatestPressure();
        if (soil.AllowableBearingPa is { } allowable && !soil.Tested)
        {
            return Check.AtMost(
                id, Trade.Stand, title, q, Trail.Given($"presumed allowable bearing of {soil.Name}", "qa", allowable, QuantityKind.Pressure, soil.Source), duty.GoverningCase, cure, soil.Caution);
        }

        if (!soil.IsClay && !soil.IsSand)
        {
            var nothing = Trail.Given("bearing that can be shown", "qa", soil.AllowableBearingPa ?? 0, QuantityKind.Pressure, soil.Source);
            return soil.AllowableBearingPa is null
                ? new(id, Trade.Stand, title, q, nothing, 0, Verdict.Unknown, duty.GoverningCase, "Give the soil's allowable bearing or its strength; have it tested.", soil.Caution)
                : Check.AtMost(id, Trade.Stand, title, q, nothing, duty.GoverningCase, cure, soil.Caution);
        }

        var effective = Math.Max(1e-3, LengthM - (2 * Math.Abs(s.Eccentricity.Value)));
        var ultimate = BearingCapacity.Ultimate(soil, effective, WidthM, BottomDepthM);
        var fs = GroundFactors.Trail("bearing", factors.Bearing);
        var mean = Trail.Computed(
            "mean pressure on the effective area", "q'", Math.Max(0, s.Down.Value) / (effective * WidthM), QuantityKind.Pressure, "q' = N/((L - 2·e)·B)", Source.FromMemory("Meyerhof 1953: effective area"), s.Down, s.Eccentricity);
        return Check.AtMost(id, Trade.Stand, title, mean, Trail.Computed("allowable bearing", "qa", ultimate.Value / fs.Value, QuantityKind.Pressure, "qa = qu/FS", Source.CommonPractice, ultimate, fs), duty.GoverningCase, cure, soil.Caution);
    }

    private Check Sliding(string part, Soil soil, FootingDuty duty, GroundFactors factors, State s)
    {
        var h = Trail.Given("horizontal force on the footing", "H", duty.HorizontalN, QuantityKind.Force, AnchorPull.FromAnalysis);
        var id = $"stand.footing.sliding[{part}]";
        const string title = "Footing against sliding";
        if (soil.BaseFriction is null && soil.BaseAdhesionPa is null)
        {
            return new(
                id, Trade.Stand, title, h, Trail.Given("resistance that can be shown", "Ha", 0, QuantityKind.Force, soil.Source), 0, Verdict.Unknown, duty.GoverningCase,
                "Give the soil's friction or adhesion under a footing.", soil.Caution);
        }

        var net = Math.Max(0, s.Down.Value);
        var fs = GroundFactors.Trail("sliding", factors.Sliding);
        var grip = soil.BaseFriction is { } mu
            ? Trail.Computed("friction under the footing", "F", mu * net, QuantityKind.Force, "F = μ·N", Source.FromMemory("IBC table 1806.2", "2012"), Trail.Given("friction coefficient", "μ", mu, QuantityKind.Ratio, soil.Source), s.Down)
            : Trail.Computed(
                "adhesion under the footing", "F", Math.Min(soil.BaseAdhesionPa!.Value * LengthM * WidthM, net / 2), QuantityKind.Force, "F = ca·L·B, at most half of N", Source.FromMemory("IBC section 1806.3.2", "2012"), Trail.Given("adhesion", "ca", soil.BaseAdhesionPa!.Value, QuantityKind.Pressure, soil.Source), s.Down);
        return Check.AtMost(
            id, Trade.Stand, title, h, Trail.Computed("allowable horizontal force", "Ha", grip.Value / fs.Value, QuantityKind.Force, "Ha = F/FS", Source.CommonPractice, grip, fs).Remark("earth in front of the footing not counted"), duty.GoverningCase,
            "Make the footing heavier, or set it deeper.", soil.Caution);
    }

    private Check Tipping(string part, Soil soil, FootingDuty duty, GroundFactors factors, State s)
    {
        var length = Trail.Given("length of the footing", "L", LengthM, QuantityKind.Length, InputSource.Design);
        var fs = GroundFactors.Trail("tipping over", factors.Overturning);
        return Check.AtMost(
            $"stand.footing.tipping[{part}]", Trade.Stand, "Footing against tipping", s.Moment,
            Trail.Computed("allowable moment at its bottom", "Ma", Math.Max(0, s.Down.Value) * LengthM / 2 / fs.Value, QuantityKind.Moment, "Ma = N·L/(2·FS)", Source.Literature("statics"), s.Down, length, fs), duty.GoverningCase,
            "Make the footing wider or heavier.", soil.Caution);
    }

    /// <summary>The footing as plain concrete that cantilevers from under the plate (ACI 318 chapter 14): reinforcement makes it stronger.</summary>
    private Check PlainConcrete(string part, double strengthPa, FootingDuty duty, State s)
    {
        const double loadFactor = 1.6;
        const double phi = 0.60;
        const double groundSideM = 0.05;
        var q = s.GreatestPressure();
        var arm = Trail.Computed(
            "overhang beyond the plate", "c", Math.Max(0, (Math.Max(LengthM, WidthM) - LoadedWidthM) / 2), QuantityKind.Length, "c = (larger side - plate)/2", Source.Literature("statics"),
            Trail.Given("width of what stands on the footing", "wp", LoadedWidthM, QuantityKind.Length, InputSource.Design));
        var depth = Trail.Computed(
            "depth counted", "h'", Math.Max(0, HeightM - groundSideM), QuantityKind.Length, "h' = h - 50 mm cast against earth", Source.FromMemory("ACI 318, section 14.5.1.7", "2019"), Trail.Given("height of the footing", "h", HeightM, QuantityKind.Length, InputSource.Design));
        // Modulus of rupture 5·√f'c in psi is 0.42·√f'c in MPa.
        var rupture = 0.42e6 * Math.Sqrt(strengthPa / 1e6);
        var stress = Trail.Computed("bending stress at the edge of the plate", "σ", depth.Value > 0 ? 3 * q.Value * arm.Value * arm.Value / (depth.Value * depth.Value) : double.PositiveInfinity, QuantityKind.Stress, "σ = 3·q·c²/h'²", Source.Literature("statics"), q, arm, depth);
        var capacity = Trail.Computed(
            "allowable bending stress of plain concrete", "σa", phi * rupture / loadFactor, QuantityKind.Stress, "σa = 0.60·0.42·√f'c/1.6", Source.FromMemory("ACI 318, section 14.5.2", "2019"),
            Trail.Given("strength of the concrete", "f'c", strengthPa, QuantityKind.Stress, InputSource.Design));
        return Check.AtMost(
            $"stand.footing.concrete[{part}]", Trade.Stand, "Footing in bending, without counting steel", stress, capacity, duty.GoverningCase,
            "Make the footing thicker, or have its reinforcement designed.", "Steel across the bottom is cheap and stops cracks even where the numbers do without.");
    }

    /// <summary>The forces at the bottom of the footing.</summary>
    private sealed class State
    {
        private readonly BaseFooting _f;

        public State(BaseFooting footing, FootingDuty duty, Soil soil)
        {
            _f = footing;
            var n = Trail.Given("downward force of the mast", "P", duty.DownN, QuantityKind.Force, AnchorPull.FromAnalysis);
            var h = Trail.Given("horizontal force of the mast", "H", duty.HorizontalN, QuantityKind.Force, AnchorPull.FromAnalysis);
            var height = Trail.Given("height of the footing", "h", footing.HeightM, QuantityKind.Length, InputSource.Design);
            var buoyancy = soil.Submerged ? Soil.WaterNPerM3 * Math.Min(footing.HeightM, footing.BottomDepthM) / footing.HeightM : 0;
            var weight = Trail.Computed(
                "weight of the footing", "W", (footing.ConcreteNPerM3 - buoyancy) * footing.LengthM * footing.WidthM * footing.HeightM, QuantityKind.Force, soil.Submerged ? "W = (γc - γw)·L·B·h" : "W = γc·L·B·h", Source.Literature("statics"),
                Trail.Given("unit weight of concrete", "γc", footing.ConcreteNPerM3, QuantityKind.UnitWeight, Source.CommonPractice), height);
            Down = Trail.Computed("downward force at the bottom", "N", duty.DownN + weight.Value, QuantityKind.Force, "N = P + W", Source.Literature("statics"), n, weight);
            Moment = Trail.Computed("moment at the bottom", "M", duty.HorizontalN * footing.HeightM, QuantityKind.Moment, "M = H·h", Source.Literature("statics"), h, height);
            var e = Down.Value > 0 ? Moment.Value / Down.Value : footing.LengthM;
            Eccentricity = Trail.Computed("eccentricity", "e", e, QuantityKind.Length, "e = M/N", Source.Literature("statics"), Moment, Down);
        }

        public Trail Down { get; }

        public Trail Moment { get; }

        public Trail Eccentricity { get; }

        /// <summary>Greatest pressure by a straight-line distribution that takes no tension.</summary>
        public Trail GreatestPressure()
        {
            var (n, e, l, b) = (Down.Value, Eccentricity.Value, _f.LengthM, _f.WidthM);
            var inside = e <= l / 6;
            var off = e >= l / 2;
            var value = n <= 0 ? 0 : off ? double.PositiveInfinity : inside ? n / (l * b) * (1 + (6 * e / l)) : 2 * n / (3 * b * ((l / 2) - e));
            return Trail.Computed(
                "greatest pressure under the footing", "q", value, QuantityKind.Pressure, inside ? "q = N/(L·B)·(1 + 6·e/L)" : "q = 2·N/(3·B·(L/2 - e))", Source.Literature("statics: straight-line pressure without tension"), Down, Eccentricity,
                Trail.Given("length", "L", l, QuantityKind.Length, InputSource.Design), Trail.Given("width", "B", b, QuantityKind.Length, InputSource.Design))
                .Within("the resultant stays on the footing", off ? "The resultant falls outside the footing: it tips." : null);
        }
    }
}
