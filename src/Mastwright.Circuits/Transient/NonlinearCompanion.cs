namespace Mastwright.Circuits.Transient;

/// <summary>A part whose conductance hangs on its own current: solved again until the two agree.</summary>
internal abstract class NonlinearCompanion(TransientPart part, int a, int b) : Companion(part, a, b)
{
    private const double Agreement = 1e-7;
    private int _tries;

    protected double Conductance { get; set; }

    /// <summary>Whether the conductance is to follow the current in this stage.</summary>
    protected abstract bool Follows { get; }

    public void BeginStage() => _tries = 0;

    public override void Stamp(StageSystem system, in Stage stage) => system.Conductance(A, B, Conductance);

    public override bool Read(StageSystem system, in Stage stage)
    {
        if (!Follows)
            return true;
        var current = Conductance * Voltage(system);
        var wanted = 1 / OhmFor(current, stage);
        var agrees = Math.Abs(wanted - Conductance) <= Agreement * Conductance;

        // Plain iteration converges for the laws in use; when it swings, the geometric mean settles it.
        Conductance = ++_tries < 12 ? wanted : Math.Sqrt(wanted * Conductance);
        return agrees;
    }

    public override double Current(StageSystem system, double timeS) => Conductance * Voltage(system);

    /// <summary>The resistance that goes with a current at the stage's end.</summary>
    protected abstract double OhmFor(double current, in Stage stage);
}

internal sealed class CurrentDependentCompanion : NonlinearCompanion
{
    private readonly Func<double, double> _ohmAt;

    public CurrentDependentCompanion(CurrentDependentResistor part, int a, int b)
        : base(part, a, b) => (_ohmAt, Conductance) = (part.OhmAt, 1 / part.OhmAt(0));

    protected override bool Follows => true;

    protected override double OhmFor(double current, in Stage stage) => _ohmAt(current);
}

/// <summary>A spark gap: it counts toward breakdown while open and integrates its arc's past while burning.</summary>
internal sealed class GapCompanion : NonlinearCompanion
{
    private const double OpenSiemens = 1e-12;

    // The arc may change its resistance by this factor (as a logarithm) within one step.
    private const double LongestLogChange = 0.4;

    private readonly GapModel _model;
    private double _start = OpenSiemens;
    private double _firedAt;
    private double _volts0;
    private double _integral;
    private ArcState _arc;
    private ArcState _middle;
    private ArcState _next;
    private double _quietSince = double.NaN;

    public GapCompanion(TransientGap part, int a, int b)
        : base(part, a, b) => (_model, Conductance) = (part.Model, OpenSiemens);

    public bool Burning { get; private set; }

    protected override bool Follows => Burning;

    /// <summary>The margin of the breakdown rule at the end of the step just solved; negative while it holds.</summary>
    public double MarginAtEnd(StageSystem system, double h)
    {
        if (Burning)
            return -1;
        var volts = Voltage(system);
        var grown = _integral + (h * (_model.Breakdown.Rate(_volts0) + _model.Breakdown.Rate(volts)) / 2);
        return _model.Breakdown.Margin(volts, grown);
    }

    public override double ErrorRatio(double h, TransientOptions allowed) =>
        Burning ? Math.Abs(Math.Log(Conductance / _start)) / LongestLogChange : 0;

    public void ResetStep() => Conductance = _start;

    public override void Accept(StageSystem system, double timeS)
    {
        var volts = Voltage(system);
        if (Burning)
            _arc = _next;
        _start = Conductance;
        _volts0 = volts;
    }

    /// <summary>Adds an accepted step of length h to the count toward breakdown; to be called before <see cref="Accept"/>.</summary>
    public void Count(StageSystem system, double h)
    {
        if (!Burning)
            _integral += h * (_model.Breakdown.Rate(_volts0) + _model.Breakdown.Rate(Voltage(system))) / 2;
    }

    public void Fire(double timeS)
    {
        (Burning, _firedAt, _arc) = (true, timeS, default);
        _quietSince = double.NaN;
        _start = Conductance = 1 / _model.Arc.ResistanceOhm(_arc);
    }

    /// <summary>Lets the arc die when it has been quiet long enough. Returns whether it did.</summary>
    public bool DiesAt(double timeS)
    {
        if (!Burning || _model.DyingCurrentA <= 0)
            return false;
        if (Math.Abs(_arc.CurrentA) >= _model.DyingCurrentA)
        {
            _quietSince = double.NaN;
            return false;
        }

        if (double.IsNaN(_quietSince))
            _quietSince = timeS;
        if (timeS - _quietSince < _model.DyingTimeS)
            return false;
        (Burning, _integral) = (false, 0);
        _start = Conductance = OpenSiemens;
        return true;
    }

    protected override double OhmFor(double current, in Stage stage)
    {
        var from = stage.Kind == StageKind.Backward ? _middle : _arc;
        var state = new ArcState(
            stage.TimeS - _firedAt,
            current,
            from.ChargeC + (stage.LengthS * (Math.Abs(from.CurrentA) + Math.Abs(current)) / 2),
            from.ActionA2S + (stage.LengthS * ((from.CurrentA * from.CurrentA) + (current * current)) / 2));
        if (stage.Kind == StageKind.Trapezoid)
            _middle = state;
        else
            _next = state;
        return _model.Arc.ResistanceOhm(state);
    }
}
