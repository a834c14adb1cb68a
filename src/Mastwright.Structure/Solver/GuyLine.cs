using Mastwright.Numerics;
using Mastwright.Structure.Cables;
using Mastwright.Structure.Mast;

namespace Mastwright.Structure.Solver;

/// <summary>The cable of a guy at a length, a share of gravity, a further load and a temperature: even, or of several pieces.</summary>
internal static class GuyLine
{
    /// <summary>Solves the guy between its ends.</summary>
    /// <param name="guy">The guy.</param>
    /// <param name="chord">From the anchor to the attachment.</param>
    /// <param name="unstressedLength">Length at the installation temperature.</param>
    /// <param name="gravity">Factor on its weight.</param>
    /// <param name="caseLoad">Further load per unstressed metre.</param>
    /// <param name="warmingK">Temperature above installation.</param>
    public static CableState Solve(Guy guy, Vec3 chord, double unstressedLength, double gravity, Vec3 caseLoad, double warmingK)
    {
        if (guy.Pieces.Count == 0)
        {
            var growth = 1 + (guy.Cable.ThermalExpansionPerK * warmingK);
            return ElasticCatenary.Solve(chord, unstressedLength * growth, guy.Cable.AxialStiffnessN, Load(guy.Cable.WeightNPerM, gravity, caseLoad) / growth);
        }

        return CompositeCable.Solve(chord, [.. Lengths(guy, unstressedLength).Zip(guy.Pieces, (length, p) =>
        {
            var growth = 1 + (p.ThermalExpansionPerK * warmingK);
            return new CableSpan(length * growth, p.AxialStiffnessN, Load(p.WeightNPerM, gravity, caseLoad) / growth, new(0, 0, -gravity * p.EndWeightN));
        })]);
    }

    /// <summary>The unstressed length that gives the guy its initial tension at the anchor over a chord; null when its weight alone pulls more.</summary>
    public static double? UnstressedLength(Guy guy, Vec3 chord, double tension)
    {
        var c = chord.Length;
        var stiffness = guy.Pieces.Count == 0 ? guy.Cable.AxialStiffnessN : guy.Pieces.Min(p => p.AxialStiffnessN);
        var shortest = c / (1 + (2 * (tension + Weight(guy, c)) / stiffness));
        return ElasticCatenary.LengthForTension(l => Solve(guy, chord, l, 1, Vec3.Zero, 0).StartTensionN, tension, shortest, c);
    }

    /// <summary>Weight of the whole guy at a length.</summary>
    public static double Weight(Guy guy, double unstressedLength) => guy.Pieces.Count == 0
        ? guy.Cable.WeightNPerM * unstressedLength
        : Lengths(guy, unstressedLength).Zip(guy.Pieces, (l, p) => (l * p.WeightNPerM) + p.EndWeightN).Sum();

    // The longest piece is the strand that was cut to fit: it gives or takes the difference.
    private static IEnumerable<double> Lengths(Guy guy, double unstressedLength)
    {
        var longest = 0;
        for (var i = 1; i < guy.Pieces.Count; i++)
        {
            longest = guy.Pieces[i].LengthM > guy.Pieces[longest].LengthM ? i : longest;
        }

        var spare = unstressedLength - guy.Pieces.Sum(p => p.LengthM);
        return guy.Pieces.Select((p, i) => i == longest ? Math.Max(p.LengthM + spare, 1e-3) : p.LengthM);
    }

    private static Vec3 Load(double weight, double gravity, Vec3 caseLoad) => new Vec3(0, 0, -gravity * weight) + caseLoad;
}
