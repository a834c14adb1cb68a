using Mastwright.Analysis.Keep;
using Mastwright.Analysis.Tune;
using Mastwright.Model.Design;
using Mastwright.Tests.Shared;

namespace Mastwright.Analysis.Tests;

public sealed class StormReplayTests
{
    private static Station Station() => Examples.Read(File.ReadAllText(Repository.File("examples", "lattice-22m.yaml"))).Station!;

    private static StormEffect Replay(double? gust, double ice, double? from) =>
        StormReplay.Of(Station(), Station().Masts[0], new ReportedStorm(gust, ice, from, 278.15), TestContext.Current.CancellationToken);

    [Fact]
    public void The_windward_guys_take_the_gust_and_the_lee_guys_are_eased()
    {
        // From the south-west: the guys to south-west are to windward.
        var effect = Replay(30, 0, 240 * Math.PI / 180);

        var windward = effect.Guys.Single(g => g.Name == "level 2 to south-west");
        Assert.True(effect.Stood);
        Assert.Equal(windward, effect.Guys.Where(g => g.Name.StartsWith("level 2", StringComparison.Ordinal)).MaxBy(g => g.Largest.Value));
        Assert.Contains("from 240°", windward.Governing);
        Assert.True(windward.Largest.Value > 1.2 * windward.BeforeN);
    }

    /// <summary>
    /// Statics by hand: glaze of thickness t on a round member of diameter d weighs ρ g π t (d + t) a metre. The foot carries all of it that sits on the mast, half of
    /// that on each guy, and the upright part of what the guys tighten by. That follows from the state equation of a flat parabola between fixed ends
    /// (Irvine, Cable Structures, from memory): a chord ℓ over the span a under w a metre at tension T needs the length ℓ·(1 + (w·a)²/(24·T²)), which is L0·(1 + T/EA + α·Δθ).
    /// The mast gives way by a millimetre under it, which eases the guys a little.
    /// </summary>
    [Fact]
    public void Ice_presses_on_the_foot_by_its_weight()
    {
        const double t = 0.010, g = 9.80665, span = 14, massPerLbPerKft = 0.45359237 / 304.8;
        static double Glaze(double d) => 900 * g * Math.PI * t * (d + t);

        // Height of the guys above the foot's plane, diameter, breaking strength, mass, wires' diameter (ASTM A475), insulators of 0.8 kg.
        double Guys(double rise, double d, double breakingN, double lbPerKft, double wireM, int insulators)
        {
            var chord = Math.Sqrt((span * span) + (rise * rise));
            var ea = 7 * Math.PI / 4 * wireM * wireM * 158.6e9;
            var bare = ((lbPerKft * massPerLbPerKft) + (insulators * 0.8 / chord)) * g;
            double Unstretched(double tension, double w, double warmer) => chord * (1 + Math.Pow(w * span / tension, 2) / 24) / (1 + (tension / ea) + (1.17e-5 * warmer));
            var set = Unstretched(0.1 * breakingN, bare, 0);
            double Tension(double w, double warmer)
            {
                var (low, high) = (100.0, breakingN);
                for (var i = 0; i < 60; i++)
                {
                    var middle = (low + high) / 2;
                    (low, high) = Unstretched(middle, w, warmer) > set ? (middle, high) : (low, middle);
                }

                return low;
            }

            // Tensioned at 15 °C, iced at 5 °C.
            return 3 * (((Tension(bare + Glaze(d), -10) - Tension(bare, -10)) * rise / chord) + (Glaze(d) * chord / 2));
        }

        // 22 m of three legs of 31.8 mm with one diagonal of 10 mm a face in every 400 mm panel of 300 mm width.
        var onMast = 22 * 3 * (Glaze(0.0318) + (0.5 / 0.4 * Glaze(0.010)));
        var byHand = onMast + Guys(11, 0.1875 * 0.0254, 17748, 73, 0.062 * 0.0254, 3) + Guys(21, 0.25 * 0.0254, 29581, 121, 0.080 * 0.0254, 4);

        var added = Replay(null, t, null).FootCompressionN - Replay(null, 0, null).FootCompressionN;

        Assert.InRange(added, 0.95 * byHand, 1.01 * byHand);
        Assert.True(Replay(3, t, null).FootCompressionN >= Replay(null, t, null).FootCompressionN);
    }

    [Fact]
    public void More_wind_does_more()
    {
        Assert.True(Replay(40, 0, 0).TopDeflectionM > Replay(20, 0, 0).TopDeflectionM);
    }

    /// <summary>A storm no such mast stands is said to be one, not hidden.</summary>
    [Fact]
    public void A_storm_beyond_the_mast_is_told()
    {
        var reading = Examples.Read(File.ReadAllText(Repository.File("examples", "fails.yaml")));

        var effect = StormReplay.Of(reading.Station!, reading.Station!.Masts[0], new ReportedStorm(80, 0.03, null, 270), TestContext.Current.CancellationToken);

        Assert.False(effect.Stood);
    }

    [Theory]
    [InlineData("1/north", "level 1 to north")]
    [InlineData("level 2 to South-East", "level 2 to south-east")]
    [InlineData("2 south-west", "level 2 to south-west")]
    public void A_guy_is_found_by_what_a_person_writes(string written, string name)
    {
        string[] names = ["level 1 to north", "level 2 to south-east", "level 2 to south-west"];

        Assert.Equal(name, GuyNames.Find(names, written, "A").Name);
        Assert.NotNull(GuyNames.Find(names, "3/east", "A").Problem);
    }

    /// <summary>Statics by hand: with the mast plumb, the vertical pull of the guys at still air follows from span, rise and tension; three alike balance.</summary>
    [Fact]
    public void The_standing_mast_has_alike_guys_alike_and_taking_one_up_tightens_it_most()
    {
        var station = Station();
        var (standing, _) = StandingMast.Of(station, station.Masts[0], 288.15, TestContext.Current.CancellationToken);

        foreach (var level in standing!.Guys.GroupBy(g => g.Level.HeightM))
        {
            Assert.InRange(level.Max(g => g.AnchorTensionN) / level.Min(g => g.AnchorTensionN), 1, 1.001);
        }

        Assert.All(standing.Guys, g => Assert.Equal(14, g.SpanM, 0.01));
        for (var i = 0; i < standing.Guys.Length; i++)
        {
            Assert.Equal(i, Enumerable.Range(0, standing.Guys.Length).MaxBy(k => standing.InfluenceNPerM[k, i]));
        }
    }
}
