namespace Mastwright.Numerics.Dense;

/// <summary>
/// Who does what next in a blocked factorisation. Block column j must have panels 0 to j - 1 applied, in order, before it
/// becomes a panel itself. The next panel always goes first, so the workers that are not busy with it still find updates
/// of earlier panels to do. The order of the arithmetic, and so the result to the last bit, is the same for any number of
/// threads.
/// </summary>
internal sealed class LuSchedule(int blocks)
{
    private readonly Lock _gate = new();
    private readonly int[] _applied = new int[blocks];
    private readonly bool[] _busy = new bool[blocks];
    private readonly int[] _openUpdates = [.. Enumerable.Range(0, blocks).Select(k => blocks - 1 - k)];
    private int _panelsDone;
    private bool _stopped;

    /// <summary>What a worker is to do.</summary>
    public enum Kind
    {
        /// <summary>Nothing is ready: ask again.</summary>
        Wait,

        /// <summary>Everything is done, or the work was stopped.</summary>
        Done,

        /// <summary>Factor block column <see cref="LuTask.Panel"/>.</summary>
        FactorPanel,

        /// <summary>Apply panel <see cref="LuTask.Panel"/> to block column <see cref="LuTask.Column"/>.</summary>
        Update,
    }

    /// <summary>A task to do now.</summary>
    public LuTask Take()
    {
        lock (_gate)
        {
            if (_stopped || _panelsDone == blocks)
                return new(Kind.Done, 0, 0);
            var next = _panelsDone;
            if (!_busy[next] && _applied[next] == next)
                return Start(new(Kind.FactorPanel, next, next));
            if (!_busy[next])
                return Start(new(Kind.Update, _applied[next], next));
            var best = -1;
            for (var j = next + 1; j < blocks; j++)
            {
                if (!_busy[j] && _applied[j] < next && (best < 0 || _applied[j] < _applied[best]))
                    best = j;
            }

            return best < 0 ? new(Kind.Wait, 0, 0) : Start(new(Kind.Update, _applied[best], best));
        }
    }

    /// <summary>Reports a task as done.</summary>
    /// <returns>True when this was the last use of the task's panel.</returns>
    public bool Finish(LuTask task)
    {
        lock (_gate)
        {
            _busy[task.Column] = false;
            if (task.Kind == Kind.FactorPanel)
            {
                _panelsDone++;
                return false;
            }

            _applied[task.Column]++;
            return --_openUpdates[task.Panel] == 0;
        }
    }

    /// <summary>No more tasks are given out.</summary>
    public void Stop()
    {
        lock (_gate)
            _stopped = true;
    }

    private LuTask Start(LuTask task)
    {
        _busy[task.Column] = true;
        return task;
    }
}

/// <summary>One step of a blocked factorisation.</summary>
internal readonly record struct LuTask(LuSchedule.Kind Kind, int Panel, int Column);
