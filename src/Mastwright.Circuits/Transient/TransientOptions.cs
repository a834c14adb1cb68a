namespace Mastwright.Circuits.Transient;

/// <summary>How long and how finely a transient is followed.</summary>
/// <param name="EndS">Time to stop, seconds.</param>
public sealed record TransientOptions(double EndS)
{
    /// <summary>The longest step, seconds; a five-hundredth of the run when null. Lines shorten it to an eighth of their delay.</summary>
    public double? LongestStepS { get; init; }

    /// <summary>The shortest step, seconds; a ten-millionth of the longest when null.</summary>
    public double? ShortestStepS { get; init; }

    /// <summary>Allowed error in each step of every capacitor's charge and coil's flux, against its highest so far.</summary>
    public double RelativeTolerance { get; init; } = 1e-5;

    /// <summary>A capacitor that never sees more than this many volts is followed as if it did.</summary>
    public double FloorV { get; init; } = 1;

    /// <summary>A coil that never carries more than this many amperes is followed as if it did.</summary>
    public double FloorA { get; init; } = 0.01;

    /// <summary>The most steps before the run gives up with a finding.</summary>
    public int MostSteps { get; init; } = 400_000;
}
