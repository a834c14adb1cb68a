using System.Numerics;
using Mastwright.Numerics.Dense.Kernels;

namespace Mastwright.Numerics.Dense;

/// <summary>
/// Right-looking blocked factorisation with partial pivoting: panels are factored by <see cref="PanelFactor{T,TTile}"/>,
/// block columns to their right updated by tiles, the workers fed by <see cref="LuSchedule"/>. Golub and Van Loan,
/// Matrix Computations, 4th ed., section 3.6.1. Rows are swapped inside a panel and to its right, not to its left: the
/// solver swaps the right-hand side panel by panel instead, which costs next to nothing.
/// </summary>
internal sealed unsafe class BlockedLu<T, TTile>
    where T : unmanaged, IFloatingPointIeee754<T>
    where TTile : struct, ITile<T>
{
    private readonly PlanarStorage<T> _a;
    private readonly int[] _pivots;
    private readonly int _width;
    private readonly int _paddedRows;
    private readonly LuSchedule _schedule;
    private readonly PackedPanel<T, TTile>?[] _panels;
    private readonly Stack<PackedPanel<T, TTile>> _spare = new();
    private int _failedColumn = -1;

    private BlockedLu(PlanarStorage<T> a, int width)
    {
        _a = a;
        _width = width;
        _pivots = new int[a.Rows];
        _paddedRows = PlanarStorage<T>.PaddedRows(a.Rows);
        var blocks = (a.Rows + width - 1) / width;
        _schedule = new(blocks);
        _panels = new PackedPanel<T, TTile>?[blocks];
    }

    /// <summary>Factors in place and gives the pivots; null when a column has no usable pivot.</summary>
    public static int[]? Factor(PlanarStorage<T> a, int width, int threads, CancellationToken cancellation, out int failedColumn)
    {
        var lu = new BlockedLu<T, TTile>(a, width);
        Workers.Run(Math.Min(threads, lu._panels.Length), () => lu.Work(cancellation));
        cancellation.ThrowIfCancellationRequested();
        failedColumn = lu._failedColumn;
        if (failedColumn >= 0)
            return null;
        return lu._pivots;
    }

    private void Work(CancellationToken cancellation)
    {
        try
        {
            WorkOff(cancellation);
        }
        catch
        {
            // Memory may run out; the other workers must not wait for what this one will never finish.
            _schedule.Stop();
            throw;
        }
    }

    private void WorkOff(CancellationToken cancellation)
    {
        var bench = new Workbench(_width, _width);
        var spin = default(SpinWait);
        while (true)
        {
            var task = _schedule.Take();
            switch (task.Kind)
            {
                case LuSchedule.Kind.Done:
                    return;
                case LuSchedule.Kind.Wait:
                    spin.SpinOnce(sleep1Threshold: -1);
                    continue;
                case LuSchedule.Kind.FactorPanel:
                    FactorPanel(task.Panel, bench);
                    break;
                case LuSchedule.Kind.Update:
                    Update(task.Panel, task.Column, bench);
                    break;
            }

            spin.Reset();
            if (_schedule.Finish(task))
                Release(task.Panel);
            if (cancellation.IsCancellationRequested)
                _schedule.Stop();
        }
    }

    private void FactorPanel(int k, Workbench bench)
    {
        var start = k * _width;
        var failed = new PanelFactor<T, TTile>(_a, _pivots, bench).Factor(start, Math.Min(_width, _a.Columns - start));
        if (failed >= 0)
        {
            _failedColumn = failed;
            _schedule.Stop();
        }
        else if (k < _panels.Length - 1)
        {
            PackedPanel<T, TTile>? panel;
            lock (_spare)
                _spare.TryPop(out panel);
            panel ??= new(_width, _paddedRows - start);
            panel.Pack(_a, start);
            _panels[k] = panel;
        }
    }

    private void Release(int k)
    {
        lock (_spare)
            _spare.Push(_panels[k]!);
        _panels[k] = null;
    }

    private void Update(int k, int j, Workbench bench)
    {
        var panel = _panels[k]!;
        var row = k * _width;
        var column = j * _width;
        var columns = Math.Min(_width, _a.Columns - column);
        Swap(column, columns, row, row + _width);
        var groups = (columns + ITile<T>.Columns - 1) / ITile<T>.Columns;
        var cRe = _a.Re + ((long)column * _a.Ld) + row;
        var cIm = _a.Im + ((long)column * _a.Ld) + row;
        for (var g = 0; g < groups; g++)
        {
            var at = (long)g * ITile<T>.Columns * _a.Ld;
            SolveTop(panel, cRe + at, cIm + at, bench.B + ((long)g * 12 * _width), bench);
        }

        var tiles = (_paddedRows - row) / TTile.Rows;
        var perChunk = Math.Max(1, bench.ChunkRows / TTile.Rows);
        for (var chunk = _width / TTile.Rows; chunk < tiles; chunk += perChunk)
        {
            var end = Math.Min(tiles, chunk + perChunk);
            for (var g = 0; g < groups; g++)
            {
                var b = bench.B + ((long)g * 12 * _width);
                for (var t = chunk; t < end; t++)
                {
                    var at = ((long)g * ITile<T>.Columns * _a.Ld) + (t * TTile.Rows);
                    TTile.Subtract(_width, panel.Tile(t), 2 * TTile.Rows, TTile.Rows, b, cRe + at, cIm + at, _a.Ld);
                }
            }
        }
    }

    /// <summary>The triangular solve for six columns, leaving the result in place and packed in <paramref name="b"/>.</summary>
    private void SolveTop(PackedPanel<T, TTile> panel, T* cRe, T* cIm, T* b, Workbench bench)
    {
        var m = TTile.Rows;
        for (var t = 0; t < _width / m; t++)
        {
            var tile = panel.Tile(t);
            TTile.Subtract(t * m, tile, 2 * m, m, b, cRe, cIm, _a.Ld);
            TilePacking<T>.PackB(cRe, cIm, _a.Ld, m, bench.Small);
            for (var c = 0; c < ITile<T>.Columns; c++)
            {
                new Span<T>(cRe + ((long)c * _a.Ld), m).Clear();
                new Span<T>(cIm + ((long)c * _a.Ld), m).Clear();
            }

            TTile.Subtract(m, tile + (2L * m * t * m), 2 * m, m, bench.Small, cRe, cIm, _a.Ld);
            TilePacking<T>.PackB(cRe, cIm, _a.Ld, m, b + (12 * t * m));
            cRe += m;
            cIm += m;
        }
    }

    private void Swap(int column, int columns, int fromRow, int toRow)
    {
        for (var c = column; c < column + columns; c++)
        {
            PanelFactor<T, TTile>.Swap(_a.Re + ((long)c * _a.Ld), _a.Im + ((long)c * _a.Ld), _pivots, fromRow, toRow);
        }
    }

    /// <summary>Scratch memory of one worker.</summary>
    internal sealed class Workbench
    {
        private readonly AlignedBuffer<T> _memory;

        public Workbench(int width, int columns)
        {
            // Groups of six columns of B, one row tile of A, one small square.
            var b = 2L * width * PlanarStorage<T>.PaddedColumns(columns);
            var a = 2L * width * TTile.Rows;
            _memory = new(b + a + (12 * TTile.Rows));
            B = _memory.Start;
            A = B + b;
            Small = A + a;

            // About 400 KiB of packed A stay in the second-level cache.
            ChunkRows = (int)Math.Max(TTile.Rows, 400_000 / (2L * sizeof(T) * width));
        }

        public T* B { get; }

        public T* A { get; }

        public T* Small { get; }

        public int ChunkRows { get; }
    }
}
