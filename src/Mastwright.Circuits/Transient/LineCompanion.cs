namespace Mastwright.Circuits.Transient;

/// <summary>
/// A lossless line: what leaves one end arrives at the other a delay later. v = Z·i + E(t), E(t) = v'(t - τ) + Z·i'(t - τ)
/// with the far end's voltage and the current into it (Bergeron's method; Dommel, IEEE Trans. PAS, 1969, from memory).
/// </summary>
internal sealed class LineCompanion(TransientLine part, int a, int b) : Companion(part, a, b)
{
    private readonly List<double> _times = [0];
    private readonly List<double> _fromA = [0];
    private readonly List<double> _fromB = [0];
    private BendWatch? _watchA;
    private BendWatch? _watchB;
    private double _end;

    public double DelayS => part.DelayS;

    // Within a step the delayed wave must already be known, and its shape must be followed.
    public override double LongestStepS => part.DelayS / 8;

    public override void Stamp(StageSystem system, in Stage stage)
    {
        _end = stage.TimeS;
        var g = 1 / part.Ohm;
        system.Add(A, A, g);
        system.Add(B, B, g);
        system.Push(A, ArrivingAtA(stage.TimeS) * g);
        system.Push(B, ArrivingAtB(stage.TimeS) * g);
    }

    public override double ErrorRatio(double h, TransientOptions allowed)
    {
        _watchA ??= new(ArrivingAtA);
        _watchB ??= new(ArrivingAtB);
        return Math.Max(_watchA.ErrorRatio(_end, h, allowed.RelativeTolerance), _watchB.ErrorRatio(_end, h, allowed.RelativeTolerance));
    }

    public override void Accept(StageSystem system, double timeS)
    {
        _times.Add(timeS);
        _fromA.Add((2 * system.Voltage(A, -1)) - ArrivingAtA(timeS));
        _fromB.Add((2 * system.Voltage(B, -1)) - ArrivingAtB(timeS));
        _watchA?.Accept(timeS);
        _watchB?.Accept(timeS);
    }

    public override double Current(StageSystem system, double timeS) => (system.Voltage(A, -1) - ArrivingAtA(timeS)) / part.Ohm;

    /// <summary>Current into the far end.</summary>
    public double FarCurrent(StageSystem system, double timeS) => (system.Voltage(B, -1) - ArrivingAtB(timeS)) / part.Ohm;

    private double ArrivingAtA(double t) => Delayed(_fromB, t - part.DelayS);

    private double ArrivingAtB(double t) => Delayed(_fromA, t - part.DelayS);

    private double Delayed(List<double> waves, double t)
    {
        if (t <= 0)
            return 0;
        var k = _times.BinarySearch(t);
        if (k >= 0)
            return waves[k];
        k = ~k;
        if (k == _times.Count)
            return waves[^1];
        var share = (t - _times[k - 1]) / (_times[k] - _times[k - 1]);
        return waves[k - 1] + (share * (waves[k] - waves[k - 1]));
    }
}
