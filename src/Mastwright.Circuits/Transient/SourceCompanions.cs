namespace Mastwright.Circuits.Transient;

/// <summary>Keeps a driving function from being stepped over: its bend within a step counts as error.</summary>
internal sealed class BendWatch(Func<double, double> value)
{
    private double _highest;

    public double ErrorRatio(double endS, double h, double tolerance)
    {
        var (v0, v1, middle) = (value(endS - h), value(endS), value(endS - (h / 2)));
        var scale = Math.Max(_highest, Math.Max(Math.Abs(v0), Math.Abs(v1)));

        // The chord of a parabola misses its middle by an eighth of h²·v''; TR-BDF2 follows the bend itself, so ten times is still accurate.
        return scale == 0 ? 0 : Math.Abs(middle - ((v0 + v1) / 2)) / (10 * tolerance * scale);
    }

    public void Accept(double timeS) => _highest = Math.Max(_highest, Math.Abs(value(timeS)));
}

internal sealed class CurrentSourceCompanion(TransientCurrentSource part, int a, int b) : Companion(part, a, b)
{
    private readonly BendWatch _watch = new(part.Wave.At);
    private double _end;

    public override IEnumerable<double> Breaks => part.Wave.Breaks;

    public override void Stamp(StageSystem system, in Stage stage)
    {
        var i = part.Wave.At(stage.TimeS);
        system.Push(A, -i);
        system.Push(B, i);
        _end = stage.TimeS;
    }

    public override double ErrorRatio(double h, TransientOptions allowed) => _watch.ErrorRatio(_end, h, allowed.RelativeTolerance);

    public override void Accept(StageSystem system, double timeS) => _watch.Accept(timeS);

    public override double Current(StageSystem system, double timeS) => part.Wave.At(timeS);
}

internal sealed class VoltageSourceCompanion(TransientVoltageSource part, int a, int b, int branch) : Companion(part, a, b)
{
    private readonly BendWatch _watch = new(part.Wave.At);
    private double _end;

    public override IEnumerable<double> Breaks => part.Wave.Breaks;

    public override void Stamp(StageSystem system, in Stage stage)
    {
        system.Branch(A, B, branch);
        system.Add(branch, branch, -part.Ohm);
        system.X[branch] += part.Wave.At(stage.TimeS);
        _end = stage.TimeS;
    }

    public override double ErrorRatio(double h, TransientOptions allowed) => _watch.ErrorRatio(_end, h, allowed.RelativeTolerance);

    public override void Accept(StageSystem system, double timeS) => _watch.Accept(timeS);

    public override double Current(StageSystem system, double timeS) => system.X[branch];
}
