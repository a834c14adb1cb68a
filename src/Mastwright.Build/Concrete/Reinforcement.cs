using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Model.Trails;

namespace Mastwright.Build.Concrete;

/// <summary>The bars of one body.</summary>
/// <param name="Body">The body.</param>
/// <param name="Bars">Bars by mark; none round a tube.</param>
/// <param name="Needed">Steel the section needs, m², the greater of its directions.</param>
/// <param name="Findings">What cannot be done with the bars there are.</param>
public sealed record ReinforcedBody(ConcreteBody Body, ImmutableArray<BarRun> Bars, Trail? Needed, ImmutableArray<Finding> Findings)
{
    /// <summary>Mass of the bars in one body, kg.</summary>
    public double SteelKg => Bars.Sum(b => b.Count * b.LengthM * b.Bar.MassKgPerM);
}

/// <summary>
/// The least reinforcement a body of concrete needs: against shrinkage in blocks and footings, and against the bending of
/// a beam that is pulled across its middle. It is a list to buy and bend by, not a design of the foundation.
/// </summary>
public static class Reinforcement
{
    /// <summary>Cover of concrete cast against soil, m: 3 in.</summary>
    public const double CoverM = 0.075;

    private const double ShrinkageShare = 0.0018;
    private const double WidestM = 0.3;
    private const double ClosestM = 0.12;
    private const double TieSpacingM = 0.6;
    private const double HookDiameters = 12;
    private const double LeastFlexurePa = 1.4e6;
    private const double FlexureFactor = 0.9;

    private static readonly Source Shrinkage = Source.FromMemory("ACI 318-19, 24.4.3.2: 0.0018 of the gross section");
    private static readonly Source Flexure = Source.FromMemory("ACI 318-19, 9.6.1.2 and 22.2: least flexural steel, rectangular stress block");

    /// <summary>The bars of a body.</summary>
    /// <param name="body">The body.</param>
    /// <param name="sizes">Bars that can be bought, in any order.</param>
    /// <param name="concretePa">Cylinder strength, Pa.</param>
    public static ReinforcedBody For(ConcreteBody body, IReadOnlyList<RebarSize> sizes, double concretePa)
    {
        if (!(body.LengthM > 0 && body.WidthM > 0 && body.HeightM > 0 && body.Count > 0) || sizes.Count == 0)
        {
            return new ReinforcedBody(body, [], null, [Refuse(body, "its size cannot be", "sizes above 0")]);
        }

        if (body.Shape == BodyShape.RoundATube)
        {
            return new ReinforcedBody(body, [], null, []);
        }

        if (Math.Min(body.LengthM, Math.Min(body.WidthM, body.HeightM)) < (2 * CoverM) + 0.03)
        {
            return new ReinforcedBody(body, [], null, [Refuse(body, "bars with cover on both sides have no room in it", string.Create(CultureInfo.InvariantCulture, $"{1000 * ((2 * CoverM) + 0.03):0} mm or more"))]);
        }

        return body.Shape == BodyShape.Beam ? Beam(body, sizes, concretePa) : Block(body, sizes);
    }

    private static ReinforcedBody Block(ConcreteBody body, IReadOnlyList<RebarSize> sizes)
    {
        // Bars along the length cross the section width by height, those along the width the section length by height; half lies at the top, half at the underside.
        var bars = ImmutableArray.CreateBuilder<BarRun>();
        foreach (var (mark, along, across, where) in new[] { ("a", body.LengthM, body.WidthM, "along the length, top and underside"), ("b", body.WidthM, body.LengthM, "along the width, top and underside") })
        {
            var (bar, count, spacing) = Layer(ShrinkageShare * across * body.HeightM / 2, across - (2 * CoverM), sizes);
            bars.Add(new BarRun(mark, where, "ends bent up or down by twelve diameters", bar, 2 * count, along - (2 * CoverM) + (2 * HookDiameters * bar.DiameterM), spacing));
        }

        var tie = bars[0].Bar;
        var round = 2 * (body.LengthM + body.WidthM - (4 * CoverM));
        var uprights = Math.Max(4, (int)Math.Ceiling((round / TieSpacingM) - 1e-9));
        bars.Add(new BarRun("c", "uprights round the sides, from the lower bars to the upper", "ends bent in by twelve diameters", tie, uprights, body.HeightM - (2 * CoverM) + (2 * HookDiameters * tie.DiameterM), round / uprights));
        var needed = Trail.Computed("shrinkage steel of a section, both faces together", "As", ShrinkageShare * Math.Max(body.LengthM, body.WidthM) * body.HeightM, QuantityKind.SectionArea, "As = 0.0018 b h", Shrinkage,
            Trail.Given("width of the section", "b", Math.Max(body.LengthM, body.WidthM), QuantityKind.Length, Source.DesignFile), Trail.Given("height", "h", body.HeightM, QuantityKind.Length, Source.DesignFile));
        return new ReinforcedBody(body, bars.ToImmutable(), needed, []);
    }

    private static ReinforcedBody Beam(ConcreteBody body, IReadOnlyList<RebarSize> sizes, double concretePa)
    {
        var stirrup = sizes.OrderBy(s => s.DiameterM).First(s => s.DiameterM >= 0.0095 || s == sizes.MaxBy(x => x.DiameterM));
        var (b, t) = (body.HeightM, body.WidthM);
        var yield = sizes.Min(s => s.YieldPa);
        var d = t - CoverM - stirrup.DiameterM - 0.008;
        var least = Math.Max(LeastFlexurePa, 0.25 * Math.Sqrt(concretePa / 1e6) * 1e6) / yield * b * d;
        var height = Trail.Given("height of the beam", "b", b, QuantityKind.Length, Source.DesignFile);
        var depth = Trail.Given("depth to the bars", "d", d, QuantityKind.FineLength, Source.DesignFile, "cover, a stirrup and half a bar off the thickness");
        var strength = Trail.Given("yield strength of the bars", "fy", yield, QuantityKind.Stress, Source.DesignFile);
        var needed = Trail.Computed("least flexural steel of a face", "As", least, QuantityKind.SectionArea, "As = max(1.4 MPa, 0.25 √(f'c MPa)) b d / fy", Flexure, height, depth, strength);
        if (body.PullN is { } pull)
        {
            // The soil holds the whole length alike, the rod pulls in the middle: M = P L / 8.
            var moment = pull * body.LengthM / 8;
            var k = 2 * moment / (FlexureFactor * 0.85 * concretePa * b);
            if (k >= d * d)
            {
                return new ReinforcedBody(body, [], needed, [Refuse(body, "it is too thin to carry the pull in bending", "a thicker or higher beam, or a stronger concrete")]);
            }

            var block = d - Math.Sqrt((d * d) - k);
            var bending = 0.85 * concretePa * b * block / yield;
            if (bending > least)
            {
                needed = Trail.Computed("flexural steel of a face", "As", bending, QuantityKind.SectionArea, "As = 0.85 f'c b a / fy with M = P L / 8 = 0.9 · 0.85 f'c b a (d − a/2)", Flexure,
                    Trail.Given("pull with its load factor", "P", pull, QuantityKind.Force, Source.Derived("docs/theory/reinforcement.md")), Trail.Given("length", "L", body.LengthM, QuantityKind.Length, Source.DesignFile), height, depth, strength);
            }
        }

        var (bar, count, spacing) = Layer(needed.Value, b - (2 * CoverM), sizes);
        var step = Math.Min(0.6, d / 2);
        var stirrups = (int)Math.Ceiling(((body.LengthM - (2 * CoverM)) / step) - 1e-9) + 1;
        var around = (2 * (b - (2 * CoverM))) + (2 * (t - (2 * CoverM))) + (2 * Math.Max(0.075, 6 * stirrup.DiameterM));
        return new ReinforcedBody(body,
        [
            new BarRun("a", "along the beam, front and back alike, for no one can tell them apart once cast", "straight, hooked by twelve diameters at both ends", bar, 2 * count, body.LengthM - (2 * CoverM) + (2 * HookDiameters * bar.DiameterM), spacing),
            new BarRun("b", "closed stirrups", "round the long bars, ends hooked round a bar", stirrup, stirrups, around, (body.LengthM - (2 * CoverM)) / (stirrups - 1)),
        ], needed, []);
    }

    // The thinnest bar that does not crowd; the thickest there is when all do.
    private static (RebarSize Bar, int Count, double SpacingM) Layer(double areaM2, double clearM, IReadOnlyList<RebarSize> sizes)
    {
        var least = Math.Max(2, (int)Math.Ceiling((clearM / WidestM) - 1e-9) + 1);
        var choices = sizes.Where(s => s.DiameterM >= 0.0115).DefaultIfEmpty(sizes.MaxBy(s => s.DiameterM)!).OrderBy(s => s.DiameterM).Select(s => (Bar: s, Count: Math.Max(least, (int)Math.Ceiling((areaM2 / s.AreaM2) - 1e-9)))).ToList();
        var (bar, count) = choices.FirstOrDefault(c => c.Count == least || clearM / (c.Count - 1) >= ClosestM, choices[^1]);
        return (bar, count, clearM / (count - 1));
    }

    private static Finding Refuse(ConcreteBody body, string why, string allowed) => new(
        "concrete-no-bars", Severity.Warning, $"No bars can be listed for {body.Name}: {why}.", null, string.Create(CultureInfo.InvariantCulture, $"{body.LengthM:0.###} × {body.WidthM:0.###} × {body.HeightM:0.###} m"), allowed, "Change its size, or have an engineer draw it.");
}
