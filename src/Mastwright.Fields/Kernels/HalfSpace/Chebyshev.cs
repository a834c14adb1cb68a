namespace Mastwright.Fields.Kernels.HalfSpace;

/// <summary>Chebyshev nodes on (−1, 1) and the weights of the value at any place between them.</summary>
internal sealed class Chebyshev
{
    private readonly double[] _barycentric;

    public Chebyshev(int order)
    {
        Nodes = [.. Enumerable.Range(0, order).Select(i => -Math.Cos(Math.PI * (i + 0.5) / order))];
        _barycentric = [.. Enumerable.Range(0, order).Select(i => (i % 2 == 0 ? 1 : -1) * Math.Sin(Math.PI * (i + 0.5) / order))];
    }

    /// <summary>The nodes, ascending.</summary>
    public double[] Nodes { get; }

    /// <summary>The weight of each node's value at a place; second form of the barycentric formula (Berrut and Trefethen 2004).</summary>
    public void Weights(double x, Span<double> weights)
    {
        var sum = 0.0;
        for (var i = 0; i < Nodes.Length; i++)
        {
            var d = x - Nodes[i];
            if (Math.Abs(d) < 1e-13)
            {
                weights[..Nodes.Length].Clear();
                weights[i] = 1;
                return;
            }

            sum += weights[i] = _barycentric[i] / d;
        }

        for (var i = 0; i < Nodes.Length; i++)
            weights[i] /= sum;
    }
}

/// <summary>The depths at which a table across the interface holds values: one (zero) for the other tables.</summary>
internal sealed class Depths
{
    private readonly double _half;
    private readonly Chebyshev _rule;

    public Depths(double depthMax, HalfSpaceMedium medium, double common)
    {
        _half = 0.5 * depthMax;
        Common = depthMax > 0 && common > 0 ? common : double.NaN;
        var order = depthMax <= 0 ? 1 : medium.Index.Magnitude * depthMax < 0.3 ? 5 : 7;
        _rule = new(order);
        Values = depthMax <= 0 ? [0] : [.. _rule.Nodes.Select(t => _half * (1 + t))];

        // One more, midway between two nodes, to test the interpolant.
        Test = depthMax <= 0 ? [] : [_half * (1 + (0.5 * (_rule.Nodes[0] + _rule.Nodes[1])))];
    }

    /// <summary>Depths with stored values.</summary>
    public double[] Values { get; }

    /// <summary>Depths used to test only.</summary>
    public double[] Test { get; }

    /// <summary>The depth asked for most often, of the radials, for which cells keep their values ready; not a number when there is none.</summary>
    public double Common { get; }

    /// <summary>The weight of the values at each stored depth.</summary>
    public void Weights(double depth, Span<double> weights)
    {
        if (Values.Length == 1)
            weights[0] = 1;
        else
            _rule.Weights((depth / _half) - 1, weights);
    }
}
