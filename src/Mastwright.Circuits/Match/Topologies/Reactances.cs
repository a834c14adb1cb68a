using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Match.Topologies;

/// <summary>Turns wanted reactances and susceptances into coils and capacitors with their trails.</summary>
internal static class Reactances
{
    private static readonly Source Circuit = Source.Derived("docs/theory/circuits-matching.md");

    /// <summary>A series section of reactance X, or none when X is nothing beside the line impedance.</summary>
    public static LadderSection? Series(MatchProblem p, Trail x)
    {
        if (Math.Abs(x.Value) < 1e-9 * p.LineOhm)
            return null;
        var w = p.Omega;
        return x.Value > 0
            ? ReactiveSection.SeriesCoil(x.Value / w) with { Why = Inductance(p, x.Value / w, "L = X/(2πf)", x) }
            : ReactiveSection.SeriesCapacitor(-1 / (w * x.Value)) with { Why = Capacitance(p, -1 / (w * x.Value), "C = -1/(2πf·X)", x) };
    }

    /// <summary>A shunt section of susceptance B, or none when B is nothing beside the line admittance.</summary>
    public static LadderSection? Shunt(MatchProblem p, Trail b)
    {
        if (Math.Abs(b.Value) < 1e-9 / p.LineOhm)
            return null;
        var w = p.Omega;
        return b.Value > 0
            ? ReactiveSection.ShuntCapacitor(b.Value / w) with { Why = Capacitance(p, b.Value / w, "C = B/(2πf)", b) }
            : ReactiveSection.ShuntCoil(-1 / (w * b.Value)) with { Why = Inductance(p, -1 / (w * b.Value), "L = -1/(2πf·B)", b) };
    }

    public static Trail Reactance(string name, string symbol, double value, string formula, params ReadOnlySpan<Trail> inputs) =>
        Trail.Computed(name, symbol, value, QuantityKind.Resistance, formula, Circuit, inputs);

    public static Trail Susceptance(string name, string symbol, double value, string formula, params ReadOnlySpan<Trail> inputs) =>
        Trail.Computed(name, symbol, value, QuantityKind.Conductance, formula, Circuit, inputs);

    public static Trail LoadResistance(double r) => Given("load resistance", "R", r);

    public static Trail LoadReactance(double x) => Given("load reactance", "Xa", x);

    public static Trail LoadConductance(MatchProblem p) => Susceptance("load conductance", "G", (1 / p.TargetOhm).Real, "G = R/(R² + Xa²)", LoadResistance(p.TargetOhm.Real), LoadReactance(p.TargetOhm.Imaginary));

    public static Trail LoadSusceptance(MatchProblem p) => Susceptance("load susceptance", "Ba", (1 / p.TargetOhm).Imaginary, "Ba = -Xa/(R² + Xa²)", LoadResistance(p.TargetOhm.Real), LoadReactance(p.TargetOhm.Imaginary));

    public static Trail Q(double q) => Trail.Given("loaded Q chosen", "Q", q, QuantityKind.Ratio, new("the designer's choice", SourceKind.Design));

    public static Trail Line(MatchProblem p) => Given("line impedance", "Z0", p.LineOhm);

    public static Ladder LadderOf(params IEnumerable<LadderSection?> sections) => new([.. sections.OfType<LadderSection>()]);

    private static Trail Given(string name, string symbol, double value) =>
        Trail.Given(name, symbol, value, QuantityKind.Resistance, new("the problem as stated", SourceKind.Design));

    private static Trail Frequency(MatchProblem p) =>
        Trail.Given("frequency", "f", p.FrequencyHz, QuantityKind.Frequency, new("the problem as stated", SourceKind.Design));

    private static Trail Inductance(MatchProblem p, double value, string formula, Trail x) =>
        Trail.Computed("inductance", "L", value, QuantityKind.Inductance, formula, Circuit, x, Frequency(p));

    private static Trail Capacitance(MatchProblem p, double value, string formula, Trail x) =>
        Trail.Computed("capacitance", "C", value, QuantityKind.Capacitance, formula, Circuit, x, Frequency(p));
}
