namespace Mastwright.Circuits.Transient;

/// <summary>The working side of a part during a run: it stamps each stage and keeps the part's past.</summary>
internal abstract class Companion(TransientPart part, int a, int b)
{
    public TransientPart Part => part;

    protected int A => a;

    protected int B => b;

    /// <summary>Longest step this part allows, seconds.</summary>
    public virtual double LongestStepS => double.PositiveInfinity;

    /// <summary>Times no step may straddle.</summary>
    public virtual IEnumerable<double> Breaks => [];

    public abstract void Stamp(StageSystem system, in Stage stage);

    /// <summary>Takes the solution of a stage. Returns false when the part must be stamped and solved again.</summary>
    public virtual bool Read(StageSystem system, in Stage stage) => true;

    /// <summary>Local error over what is allowed, for a step about to be accepted.</summary>
    public virtual double ErrorRatio(double h, TransientOptions allowed) => 0;

    /// <summary>Makes the end of the step the start of the next.</summary>
    public virtual void Accept(StageSystem system, double timeS)
    {
    }

    /// <summary>Current from A to B at the end of the accepted step.</summary>
    public abstract double Current(StageSystem system, double timeS);

    public double Voltage(StageSystem system) => system.Voltage(a, b);
}

internal sealed class ResistorCompanion(TransientPart part, int a, int b, Func<double, double> ohmAt) : Companion(part, a, b)
{
    public override void Stamp(StageSystem system, in Stage stage) => system.Conductance(A, B, 1 / ohmAt(stage.TimeS));

    public override double Current(StageSystem system, double timeS) => Voltage(system) / ohmAt(timeS);
}

internal sealed class SwitchCompanion(TransientSwitch part, int a, int b) : Companion(part, a, b)
{
    public override IEnumerable<double> Breaks => part.ClosedAt.Breaks;

    public override void Stamp(StageSystem system, in Stage stage) => system.Conductance(A, B, 1 / Ohm(stage.TimeS));

    public override double Current(StageSystem system, double timeS) => Voltage(system) / Ohm(timeS);

    private double Ohm(double t) => part.ClosedAt.At(t) > 0 ? part.ClosedOhm : part.OpenOhm;
}

internal sealed class CapacitorCompanion : Companion
{
    private readonly double _farad;
    private StateTrack _charge;
    private double _highest;

    public CapacitorCompanion(TransientCapacitor part, int a, int b)
        : base(part, a, b)
    {
        _farad = part.Farad;
        _charge.X0 = part.Farad * part.InitialV;
    }

    public override void Stamp(StageSystem system, in Stage stage)
    {
        system.Conductance(A, B, stage.K * _farad);
        var push = stage.K * stage.Past(_charge);
        system.Push(A, push);
        system.Push(B, -push);
    }

    public override bool Read(StageSystem system, in Stage stage)
    {
        _charge.Set(stage, _farad * Voltage(system));
        return true;
    }

    public override double ErrorRatio(double h, TransientOptions allowed)
    {
        var scale = allowed.RelativeTolerance * Math.Max(_highest, Math.Abs(_charge.X2) + (_farad * allowed.FloorV));
        return Math.Abs(Stage.Error(_charge, h)) / scale;
    }

    public override void Accept(StageSystem system, double timeS)
    {
        _charge.Accept();
        _highest = Math.Max(_highest, Math.Abs(_charge.X0));
    }

    public override double Current(StageSystem system, double timeS) => _charge.F0;
}

internal sealed class InductorCompanion : Companion
{
    private readonly int _branch;
    private readonly List<(double Henry, InductorCompanion Coil)> _fluxOf = [];
    private readonly double _initialA;
    private StateTrack _flux;
    private double _highest;

    public InductorCompanion(TransientInductor part, int a, int b, int branch)
        : base(part, a, b)
    {
        (_branch, _initialA) = (branch, part.InitialA);
        _fluxOf.Add((part.Henry, this));
        _flux.X0 = part.Henry * part.InitialA;
    }

    public void Couple(double henry, InductorCompanion other)
    {
        _fluxOf.Add((henry, other));
        _flux.X0 += henry * other._initialA;
    }

    public override void Stamp(StageSystem system, in Stage stage)
    {
        system.Branch(A, B, _branch);
        foreach (var (henry, coil) in _fluxOf)
            system.Add(_branch, coil._branch, -stage.K * henry);
        system.X[_branch] -= stage.K * stage.Past(_flux);
    }

    public override bool Read(StageSystem system, in Stage stage)
    {
        var flux = 0.0;
        foreach (var (henry, coil) in _fluxOf)
            flux += henry * system.X[coil._branch];
        _flux.Set(stage, flux);
        return true;
    }

    public override double ErrorRatio(double h, TransientOptions allowed)
    {
        var scale = allowed.RelativeTolerance * Math.Max(_highest, Math.Abs(_flux.X2) + (_fluxOf[0].Henry * allowed.FloorA));
        return Math.Abs(Stage.Error(_flux, h)) / scale;
    }

    public override void Accept(StageSystem system, double timeS)
    {
        _flux.Accept();
        _highest = Math.Max(_highest, Math.Abs(_flux.X0));
    }

    public override double Current(StageSystem system, double timeS) => system.X[_branch];
}
