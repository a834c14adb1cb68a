using Mastwright.Fields.Earth;
using Mastwright.Fields.Results;
using Mastwright.Fields.Solving;
using Mastwright.Fields.Wires;
using Mastwright.Numerics;
using static Mastwright.Fields.Tests.Monopoles;

namespace Mastwright.Fields.Tests;

/// <summary>Laws that hold for any model, tried on seeded random ones.</summary>
public class RandomModelTests
{
    [Fact]
    public void Power_in_is_power_out_for_any_wires()
    {
        var solved = 0;
        for (var seed = 0; seed < 30; seed++)
        {
            var random = new Random(seed);
            var model = Tree(random, seed % 3 == 0 ? Ground.FreeSpace : Ground.Perfect, seed % 2 == 0 ? 1 : 25);
            var result = WireSolver.Solve(model, 1.8e6 + (13e6 * random.NextDouble()), cancellation: TestContext.Current.CancellationToken);
            if (result.Solution is not { } solution)
            {
                // Random arms may run through each other; nothing else may go wrong.
                Assert.All(result.Findings, f => Assert.StartsWith("wires-", f.Code));
                continue;
            }

            solved++;
            var driven = solution.DrivePower(100);
            Near(100, FarField.Of(driven).RadiatedPowerW + driven.LossPowerW, 0.003);
        }

        Assert.InRange(solved, 20, 30);
    }

    [Fact]
    public void Any_wires_in_and_over_soil_are_passive_and_reciprocal()
    {
        var solved = 0;
        for (var seed = 0; seed < 12; seed++)
        {
            var random = new Random(seed);
            double Between(double low, double high) => low + ((high - low) * random.NextDouble());
            var soil = new Soil("random", Between(4, 40), Math.Pow(10, Between(-3.5, -1.8)));
            var model = Tree(random, Ground.Over(soil), 15).With(new Wire("root", new(0, 0, -0.4), Vec3.Zero, 0.01));
            for (var i = 0; i < 3; i++)
                model = model.With(new Wire($"radial {i}", new(0, 0, -0.4), new(Between(-12, 12), Between(-12, 12), Between(-0.8, -0.2)), 0.002));
            model = model.WithFeed("buried", "radial 1", 0.4);
            var result = WireSolver.Solve(model, 1.8e6 + (6e6 * random.NextDouble()), cancellation: TestContext.Current.CancellationToken);
            if (result.Solution is not { } solution)
            {
                Assert.All(result.Findings, f => Assert.StartsWith("wires-", f.Code));
                continue;
            }

            solved++;
            var z = solution.PortImpedances;
            Near(z[0, 1], z[1, 0], 1e-6);
            Assert.True(z[0, 0].Real > 0 && z[1, 1].Real > 0);
            Assert.True(z[0, 0].Real * z[1, 1].Real > z[0, 1].Real * z[0, 1].Real);
            var driven = solution.DrivePower(100);
            Assert.InRange(FarField.Of(driven).RadiatedPowerW, 0, 100 - driven.LossPowerW);
        }

        Assert.InRange(solved, 8, 12);
    }

    // A fed mast with arms at random places, some with a further piece at their end.
    private static WireModel Tree(Random random, Ground ground, double spreadM)
    {
        double Between(double low, double high) => low + ((high - low) * random.NextDouble());
        var height = Between(5, 30);
        var model = WireModel.Over(ground)
            .With(new Wire("mast", Vec3.Zero, new(0, 0, height), Between(0.01, 0.1)))
            .WithFeed("base", "mast", ground is Ground.Empty ? 0.3 : 0);
        var arms = random.Next(1, 5);
        for (var i = 0; i < arms; i++)
        {
            Vec3 from = new(0, 0, random.Next(3) == 0 ? height : Between(0.1, 1) * height);
            Vec3 to = new(Between(-spreadM, spreadM), Between(-spreadM, spreadM), Between(0.3, 30));
            model = model.With(new Wire($"arm {i}", from, to, Between(0.001, 0.02), Conductor.Copper));
            if (random.Next(2) == 0)
                model = model.With(new Wire($"tail {i}", to, to + new Vec3(Between(-8, 8), Between(-8, 8), Between(0.1, 6)), Between(0.001, 0.02)));
        }

        return model;
    }
}
