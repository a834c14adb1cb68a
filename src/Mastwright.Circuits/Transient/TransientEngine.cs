using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Transient;

/// <summary>
/// Follows a circuit through time: TR-BDF2 steps of controlled length, a backward Euler step after every jump, and
/// the moment a gap fires found within its step. One engine serves one run.
/// </summary>
internal sealed class TransientEngine
{
    private const int MostIterations = 60;
    private readonly TransientOptions _options;
    private readonly TransientWiring _wiring;
    private readonly StageSystem _system;
    private readonly BreakQueue _breaks;
    private readonly double _longest;
    private readonly double _shortest;
    private readonly TransientRecorder _record;
    private readonly List<Finding> _findings = [];
    private double _t;

    public TransientEngine(TransientCircuit circuit, TransientOptions options)
    {
        _options = options;
        Guard.Positive(options.EndS);
        _wiring = new(circuit);
        _system = new(_wiring.Size);
        _longest = Math.Min(options.LongestStepS ?? (options.EndS / 500), _wiring.Companions.Select(c => c.LongestStepS).DefaultIfEmpty(double.PositiveInfinity).Min());
        _shortest = Math.Min(options.ShortestStepS ?? double.PositiveInfinity, _longest * 1e-7);
        _breaks = new(_wiring.Lines.Select(l => l.DelayS), _longest * 1e-7);
        foreach (var at in _wiring.Companions.SelectMany(c => c.Breaks).Where(at => at > 0))
            _breaks.Add(at);
        _breaks.Echo(0);
        _record = new(_wiring);
    }

    public TransientResult Run(IProgress<double>? progress, CancellationToken cancel)
    {
        var afterJump = true;
        var h = _longest * 1e-3;
        var shown = 0.0;
        for (var step = 0; _t < _options.EndS * (1 - 1e-12); step++)
        {
            cancel.ThrowIfCancellationRequested();
            if (step >= _options.MostSteps)
            {
                Stop("transient-steps", "The run used up its steps before its end.", "Shorten the run, or allow more steps.");
                break;
            }

            var room = Math.Min(_breaks.Next, _options.EndS) - _t;
            if (afterJump)
            {
                // A thousandth of the first step after it: long enough to be numbers apart, short enough to change nothing.
                var tiny = Math.Min(_longest * 1e-6, room / 2);
                if (!Solve(Stage.Euler(_t, tiny)))
                {
                    Stalled();
                    break;
                }

                Accept(tiny);
                (afterJump, h) = (false, _longest * 1e-3);
                continue;
            }

            h = Math.Min(h, _longest);
            var taken = h > room * 0.999 ? room : h;
            var error = Try(taken);
            if (_findings.Count > 0)
                break;
            if (error > 1 && taken > _shortest)
            {
                h = Math.Max(_shortest, taken * Math.Clamp(0.9 / Math.Cbrt(error), 0.1, 0.7));
                continue;
            }

            if (double.IsInfinity(error))
            {
                Stalled();
                break;
            }

            if (AnyFires(taken))
            {
                taken = LocateFiring(taken);
                afterJump = true;
            }

            Accept(taken);
            afterJump |= Events();
            if (_breaks.Reached(_t))
                afterJump = true;
            h = taken * Math.Clamp(0.9 / Math.Cbrt(Math.Max(error, 1e-9)), 0.5, 2);
            if (progress is not null && _t / _options.EndS > shown + 0.01)
                progress.Report(shown = _t / _options.EndS);
        }

        progress?.Report(1);
        return _record.ToResult(_findings);
    }

    /// <summary>Solves a whole step without accepting it. Returns error over tolerance; infinite when an arc does not settle.</summary>
    private double Try(double h)
    {
        foreach (var gap in _wiring.Gaps)
            gap.ResetStep();
        if (!Solve(Stage.Trapezoid(_t, h)) || !Solve(Stage.Backward(_t, h)))
            return double.PositiveInfinity;
        var worst = 0.0;
        foreach (var c in _wiring.Companions)
            worst = Math.Max(worst, c.ErrorRatio(h, _options));
        return worst;
    }

    private bool Solve(in Stage stage)
    {
        foreach (var n in _wiring.Nonlinear)
            n.BeginStage();
        for (var i = 0; i < MostIterations; i++)
        {
            _system.Clear();
            foreach (var c in _wiring.Companions)
                c.Stamp(_system, stage);
            var bad = _system.Matrix.Factor();
            if (bad >= 0)
            {
                Stop("transient-singular", $"{_wiring.NameOf(bad)} is left without a path.", "Connect every node to the rest of the circuit.");
                return false;
            }

            _system.Matrix.Solve(_system.X);
            var settled = true;
            foreach (var c in _wiring.Companions)
                settled &= c.Read(_system, stage);
            if (settled)
                return true;
        }

        return false;
    }

    private bool AnyFires(double h) => _wiring.Gaps.Any(g => g.MarginAtEnd(_system, h) >= 0);

    // Halving with the step solved anew each time; ends at the shortest step found that fires.
    private double LocateFiring(double h)
    {
        var (holds, fires) = (0.0, h);
        var close = Math.Max(_shortest, h * 1e-7);
        while (fires - holds > close)
        {
            var middle = (holds + fires) / 2;
            Try(middle);
            if (AnyFires(middle))
                fires = middle;
            else
                holds = middle;
        }

        Try(fires);
        return fires;
    }

    private void Accept(double h)
    {
        foreach (var gap in _wiring.Gaps)
            gap.Count(_system, h);
        var end = _t + h;
        foreach (var c in _wiring.Companions)
            c.Accept(_system, end);
        _t = end;
        _record.Add(_system, _t);
    }

    private bool Events()
    {
        var any = false;
        foreach (var gap in _wiring.Gaps)
        {
            if (gap.MarginAtEnd(_system, 0) >= 0)
            {
                gap.Fire(_t);
                _record.Event(_t, gap.Part.Name, TransientEventKind.Fired);
                any = true;
            }
            else if (gap.DiesAt(_t))
            {
                _record.Event(_t, gap.Part.Name, TransientEventKind.Died);
                any = true;
            }
        }

        if (any)
            _breaks.Echo(_t);
        return any;
    }

    private void Stalled()
    {
        if (_findings.Count == 0)
            Stop("transient-stalled", "The arc and the circuit find no common current even in the shortest step.", "Give the gap's surroundings their inductance, or the arc a higher floor resistance.");
    }

    private void Stop(string code, string message, string wayOut) =>
        _findings.Add(new(code, Severity.Error, FormattableString.Invariant($"{message} Time reached: {_t:G6} s of {_options.EndS:G6} s."), WayOut: wayOut));
}
