using Mastwright.Fields.Wires;
using Mastwright.Numerics;

namespace Mastwright.Bench.Fields;

/// <summary>Invented stations to time.</summary>
internal static class Stations
{
    /// <summary>A 22 m lattice mast with two levels of three guys, each cut into four pieces.</summary>
    public static WireModel Guyed(Ground ground) => WithGuys(WireModel.Over(ground)
        .With(new Wire("mast", Vec3.Zero, new(0, 0, 22), 0.12, Conductor.Zinc)).WithFeed("base", "mast"));

    /// <summary>The same guys on another mast in the same place.</summary>
    public static WireModel WithGuys(WireModel model)
    {
        for (var g = 0; g < 3; g++)
        {
            var (s, c) = Math.SinCos(2 * Math.PI * g / 3);
            foreach (var (level, anchor) in ((double, double)[])[(10, 12), (20, 14)])
            {
                Vec3 top = new(0, 0, level), bottom = new(anchor * c, anchor * s, 0.3);
                for (var p = 0; p < 4; p++)
                {
                    var from = p == 0 ? top : top + ((p + 0.02) / 4 * (bottom - top));
                    model = model.With(new Wire($"guy {g} {level} {p}", from, top + ((p + 0.98) / 4 * (bottom - top)), 0.003, Conductor.Steel));
                }
            }
        }

        return model;
    }

    /// <summary>A bare mast over buried radials.</summary>
    public static WireModel Buried(Ground ground, int radials, Vec3 foot, string name = "", double lengthM = 20)
    {
        Vec3 hub = foot - new Vec3(0, 0, 0.1);
        var model = WireModel.Over(ground)
            .With(new Wire($"mast{name}", foot, foot + new Vec3(0, 0, 20), 0.05), new Wire($"stub{name}", hub, foot, 0.01)).WithFeed($"base{name}", $"mast{name}");
        for (var i = 0; i < radials; i++)
        {
            var (s, c) = Math.SinCos(2 * Math.PI * i / radials);
            model = model.With(new Wire($"radial{name} {i}", hub, hub + new Vec3(lengthM * c, lengthM * s, 0), 0.001, Conductor.Copper));
        }

        return model;
    }
}
