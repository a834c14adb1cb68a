using Mastwright.Fields.Results;
using Mastwright.Fields.Solving;
using Mastwright.Model.Trails;

namespace Mastwright.Fields.Earth;

/// <summary>What real earth costs a mast, from exact solutions over the soil and over perfect ground.</summary>
/// <param name="Efficiency">Square of the field along the ground over that of the same mast on perfect ground without any loss, for the same power.</param>
/// <param name="LossResistance">All loss referred to the feed current, ohms: R(1 − η).</param>
/// <param name="WireLoss">The part that heats wires, radials and loads, ohms.</param>
/// <param name="EarthLoss">The rest, ohms: heat in the soil.</param>
public sealed record EarthComparison(Trail Efficiency, Trail LossResistance, Trail WireLoss, Trail EarthLoss)
{
    private const int Azimuths = 16;

    private static readonly Source Method = new("Brown, Lewis and Epstein 1937: ground systems judged by the unattenuated field along the ground", SourceKind.FromMemory);

    /// <summary>
    /// Compares a mast over soil with the same mast on perfect ground. The field is the mean square over all directions, before Norton's
    /// attenuation, as the 1937 measurements took it.
    /// </summary>
    /// <param name="overSoil">Solution with <c>Ground.Over(soil)</c> and the radials as wires.</param>
    /// <param name="overPerfectGround">Solution of the same mast with <c>Ground.Perfect</c>.</param>
    /// <param name="feed">The feed, the same in both; all others open.</param>
    public static EarthComparison Of(WireSolution overSoil, WireSolution overPerfectGround, int feed = 0)
    {
        ArgumentNullException.ThrowIfNull(overSoil);
        ArgumentNullException.ThrowIfNull(overPerfectGround);
        DrivenWires real = overSoil.DrivePower(1, feed), perfect = overPerfectGround.DrivePower(1, feed);
        FarField realFar = FarField.Of(real), perfectFar = FarField.Of(perfect);
        var fieldShare = MeanSquare(realFar) / MeanSquare(perfectFar);

        // The yardstick radiates all its power; what its wires heat does not count against the earth.
        var eta = fieldShare * perfectFar.RadiatedPowerW;
        var resistance = overSoil.FeedImpedance(feed).Real;
        var wireOhm = real.LossPowerW * resistance;
        var lossOhm = resistance * (1 - eta);
        var given = Trail.Computed(
            "feed resistance over the soil", "R", resistance, QuantityKind.Resistance, "R = Re(V/I) of the solved currents", Source.Derived("docs/theory/fields-soil.md"),
            Trail.Given("frequency", "f", overSoil.FrequencyHz, QuantityKind.Frequency, Source.DesignFile),
            Trail.Given("unknown currents", "n", overSoil.Mesh.UnknownCount, QuantityKind.Count, Source.Derived("docs/theory/fields-soil.md")));
        var share = Trail.Given("mean square field along the ground, soil over perfect ground, same power", "(E/E0)²", fieldShare, QuantityKind.Ratio, Source.Derived("docs/theory/fields-soil.md"));
        var yardstick = Trail.Given("share radiated over perfect ground", "p0", perfectFar.RadiatedPowerW, QuantityKind.Ratio, Source.Derived("docs/theory/fields-wires.md"));
        var above = eta > 1
            ? "efficiency: above 100 %, for it is the square of the field along the ground over that on perfect ground, and a long screen spares the wave its first stretch of poor soil; the ground costs nothing here, and it is no gain in power"
            : null;
        var efficiency = Trail.Computed("efficiency with the ground system", "η", eta, QuantityKind.Ratio, "η = (E/E0)²·p0", Method, share, yardstick)
            .Within("flat uniform soil; the far loss of the wave on its way is not counted", above);
        var loss = Trail.Computed("loss resistance at the feed", "R_loss", lossOhm, QuantityKind.Resistance, "R_loss = R·(1 − η)", Method, given, efficiency);
        var wire = Trail.Computed("loss resistance of wires and loads", "R_w", wireOhm, QuantityKind.Resistance, "R_w = Σ heat in wires and loads / |I|²", Source.Derived("docs/theory/fields-wires.md"), given);
        var earth = Trail.Computed("loss resistance of the earth", "R_g", lossOhm - wireOhm, QuantityKind.Resistance, "R_g = R_loss − R_w", Method, loss, wire);
        return new(efficiency, loss, wire, earth);
    }

    // For one watt into the feed, volts squared.
    private static double MeanSquare(FarField far)
    {
        var sum = 0.0;
        for (var i = 0; i < Azimuths; i++)
            sum += Math.Pow(far.FieldAt1KmVPerM(1, 2 * Math.PI * (i + 0.3) / Azimuths), 2);
        return sum / Azimuths;
    }
}
