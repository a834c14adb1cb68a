using Mastwright.Catalog;
using Mastwright.Fields.Wires;
using Mastwright.Model.Design;
using Mastwright.Numerics;
using Wire = Mastwright.Fields.Wires.Wire;

namespace Mastwright.Analysis.Radiate;

/// <summary>
/// A run of lattice leg by leg: upright wires on the circle through the legs, tied to each other at the ends of the run and wherever a guy
/// leaves. Diagonals and horizontals carry little current along the mast and are left out.
/// </summary>
internal static class LatticeWires
{
    /// <summary>Marks a leg in the name of its wires.</summary>
    public const string LegMark = ", leg ";

    /// <summary>Number of legs of a run.</summary>
    public static int Legs(Section section) => Catalogue.Default.Lattices[section.Lattice!].Legs;

    /// <summary>Adds one run.</summary>
    /// <param name="model">The wires so far.</param>
    /// <param name="mast">The mast.</param>
    /// <param name="run">Index of the run.</param>
    /// <param name="foot">Axis at its lower end.</param>
    /// <param name="top">Axis at its upper end.</param>
    public static WireModel Add(WireModel model, Mast mast, int run, Vec3 foot, Vec3 top)
    {
        var lattice = Catalogue.Default.Lattices[mast.Sections[run].Lattice!];
        var (legs, radius, metal) = (lattice.Legs, lattice.LegDiameterM / 2, WireModels.MetalOf(mast.Sections[run]));
        var out_ = lattice.FaceWidthM / (2 * Math.Sin(Math.PI / legs));
        var first = FirstRad(mast, legs);
        var heights = mast.Guys.Select(g => g.HeightM).Where(h => h > foot.Z + 0.05 && h < top.Z - 0.05).Prepend(foot.Z).Append(top.Z).Distinct().Order().ToList();
        Vec3 Leg(int leg, double z)
        {
            var (s, c) = Math.SinCos(first + (2 * Math.PI * leg / legs));
            return new(foot.X + (out_ * c), foot.Y + (out_ * s), z);
        }

        var name = $"mast {mast.Name}, run {run + 1}";
        foreach (var (z, tie) in heights.Select((z, i) => (z, i + 1)))
        {
            // Where runs of one lattice meet the ties are there already.
            if (z <= foot.Z && run > 0 && mast.Sections[run - 1].Lattice == mast.Sections[run].Lattice)
            {
                continue;
            }

            model = model.With([.. Enumerable.Range(0, legs).Select(k => new Wire($"{name}, tie {tie}.{k + 1}", foot with { Z = z }, Leg(k, z), radius, metal))]);
        }

        for (var i = 0; i + 1 < heights.Count; i++)
        {
            model = model.With([.. Enumerable.Range(0, legs).Select(k => new Wire($"{name}{LegMark}{k + 1}, part {i + 1}", Leg(k, heights[i]), Leg(k, heights[i + 1]), radius, metal))]);
        }

        return model;
    }

    // Turned to where guys leave as far from any leg as can be.
    private static double FirstRad(Mast mast, int legs)
    {
        var step = 2 * Math.PI / legs;
        var guys = mast.Anchors.Select(a => (Math.PI / 2) - a.BearingRad).ToList();
        return guys.Count == 0 ? 0 : Enumerable.Range(0, 24).Select(i => guys[0] + (step * (i + 0.5) / 24)).MaxBy(f => guys.Min(g => Math.Abs(Math.IEEERemainder(g - f, step))));
    }
}
