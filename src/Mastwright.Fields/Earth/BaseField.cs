using System.Numerics;
using Mastwright.Fields.Meshing;
using Mastwright.Fields.Results;
using Mastwright.Model.Units;
using Mastwright.Numerics;

namespace Mastwright.Fields.Earth;

/// <summary>
/// The magnetic field a mast lays along the ground around its base, for one ampere of base current over perfect ground: what drives
/// the loss in the soil.
/// </summary>
public abstract class BaseField
{
    /// <summary>Frequency in hertz.</summary>
    public abstract double FrequencyHz { get; }

    /// <summary>In words, where the field comes from.</summary>
    public abstract string Origin { get; }

    /// <summary>Why this field is not to be trusted, or null.</summary>
    public virtual string? OutOfRange => null;

    /// <summary>Mean over all directions of |H|² at a distance from the base, A²/m² for 1 A of base current.</summary>
    public abstract double MeanSquare(double distanceM);

    /// <summary>A bare mast with sinusoidal current: good for a mast without top loading up to about 0.4 wavelength.</summary>
    /// <param name="heightM">Height in metres.</param>
    /// <param name="frequencyHz">Frequency in hertz.</param>
    public static BaseField OfBareMast(double heightM, double frequencyHz) => new Sinusoidal(heightM, frequencyHz);

    /// <summary>The field of a solved model over perfect ground, around one of its feeds.</summary>
    /// <param name="driven">The driven model.</param>
    /// <param name="feed">The feed whose current the loss refers to and around which the radials lie.</param>
    public static BaseField Of(DrivenWires driven, int feed = 0)
    {
        ArgumentNullException.ThrowIfNull(driven);
        return new Solved(driven, feed);
    }

    /// <summary>
    /// H = jI/(2πr sin kh)·[exp(−jk√(r² + h²)) − cos kh·exp(−jkr)], the sinusoidal-current mast over perfect ground (Brown 1935, from memory).
    /// </summary>
    internal static Complex SinusoidalH(double k, double heightM, Complex distanceM)
    {
        var slant = Complex.Sqrt((distanceM * distanceM) + (heightM * heightM));
        var sine = Math.Sin(k * heightM);
        return new Complex(0, 1) / (2 * Math.PI * distanceM * sine)
            * (Complex.Exp(new Complex(0, -k) * slant) - (Math.Cos(k * heightM) * Complex.Exp(new Complex(0, -k) * distanceM)));
    }

    private sealed class Sinusoidal(double heightM, double frequencyHz) : BaseField
    {
        public override double FrequencyHz => frequencyHz;

        public override string Origin => "sinusoidal current of a bare mast";

        public override string? OutOfRange => heightM / Vacuum.WavelengthM(frequencyHz) > 0.42
            ? "the mast is higher than about 0.42 wavelength, where base current and so the loss resistance referred to it lose their meaning in the sinusoidal picture"
            : null;

        public override double MeanSquare(double distanceM)
        {
            var h = SinusoidalH(Vacuum.WaveNumber(frequencyHz), heightM, distanceM).Magnitude;
            return h * h;
        }
    }

    private sealed class Solved : BaseField
    {
        private const int Azimuths = 8;
        private readonly DrivenWires _driven;
        private readonly Vec3 _base;
        private readonly double _currentSquared;

        public Solved(DrivenWires driven, int feed)
        {
            _driven = driven;
            var end = driven.Mesh.FeedEnds[feed];
            var segment = driven.Mesh.Segments[end.Segment];
            var at = end.End == 0 ? segment.Start : segment.End;
            _base = new(at.X, at.Y, 0);
            _currentSquared = Math.Pow(driven.FeedCurrents[feed].Magnitude, 2);
            OutOfRange = at.Z > 0.02 * Vacuum.WavelengthM(driven.FrequencyHz)
                ? "the feed lies well above the ground, so its current is not the current into the ground"
                : JointGraph.IsGrounded(at, driven.Mesh.Model.Ground) ? null : "the feed is not joined to the ground";
        }

        public override double FrequencyHz => _driven.FrequencyHz;

        public override string Origin => "solved currents of all wires";

        public override string? OutOfRange { get; }

        public override double MeanSquare(double distanceM)
        {
            var sum = 0.0;
            for (var i = 0; i < Azimuths; i++)
            {
                var (sin, cos) = Math.SinCos(2 * Math.PI * (i + 0.25) / Azimuths);
                var magnitude = NearField.At(_driven, _base + new Vec3(distanceM * cos, distanceM * sin, 0)).Magnetic.Magnitude;
                sum += magnitude * magnitude;
            }

            return sum / (Azimuths * _currentSquared);
        }
    }
}
