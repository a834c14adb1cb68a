using Mastwright.Numerics;
using Mastwright.Structure.Members;

namespace Mastwright.Structure.Parts.Tests.Members;

/// <summary>A pin-jointed space truss by the direct stiffness method, dense and plain: an independent model of a lattice.</summary>
internal sealed class SpaceTruss
{
    private readonly List<Vec3> _nodes = [];
    private readonly List<(int A, int B, double Ea)> _bars = [];
    private readonly int _legs;

    private SpaceTruss(int legs) => _legs = legs;

    public static SpaceTruss Tower(LatticeSection s, int panels)
    {
        var truss = new SpaceTruss(s.Legs);
        var e = s.Metal.ModulusPa;
        for (var level = 0; level <= panels; level++)
        {
            for (var k = 0; k < s.Legs; k++)
            {
                var a = 2 * Math.PI * k / s.Legs;
                truss._nodes.Add(new(s.LegRadiusM * Math.Sin(a), s.LegRadiusM * Math.Cos(a), level * s.PanelHeightM));
            }
        }

        for (var level = 0; level < panels; level++)
        {
            for (var k = 0; k < s.Legs; k++)
            {
                var next = (k + 1) % s.Legs;
                int low = level * s.Legs, high = low + s.Legs;
                truss._bars.Add((low + k, high + k, e * s.Leg.AreaM2));
                truss._bars.Add((high + k, high + next, e * s.Horizontal!.AreaM2));
                if (s.DiagonalsPerPanel == 2 || level % 2 == 0)
                {
                    truss._bars.Add((low + k, high + next, e * s.Diagonal.AreaM2));
                }

                if (s.DiagonalsPerPanel == 2 || level % 2 == 1)
                {
                    truss._bars.Add((low + next, high + k, e * s.Diagonal.AreaM2));
                }
            }
        }

        return truss;
    }

    /// <summary>Mean sideways movement of the top under a sideways force shared by the top nodes.</summary>
    public double Sway(double force) => Top(Solve(_ => new(force / _legs, 0, 0))).Average(u => u.U.X);

    /// <summary>Mean twist of the top under a torque given by tangential forces on the top nodes.</summary>
    public double Twist(double torque)
    {
        var radius = Math.Sqrt((_nodes[^1].X * _nodes[^1].X) + (_nodes[^1].Y * _nodes[^1].Y));
        Vec3 Tangent(Vec3 at) => new Vec3(-at.Y, at.X, 0) / radius;
        return Top(Solve(at => torque / _legs / radius * Tangent(at))).Average(u => u.U.Dot(Tangent(u.At)) / radius);
    }

    /// <summary>Mean shortening under a force down.</summary>
    public double Shorten(double force) => -Top(Solve(_ => new(0, 0, -force / _legs))).Average(u => u.U.Z);

    private IEnumerable<(Vec3 At, Vec3 U)> Top(double[] u)
    {
        for (var k = _nodes.Count - _legs; k < _nodes.Count; k++)
        {
            var i = 3 * (k - _legs);
            yield return (_nodes[k], new(u[i], u[i + 1], u[i + 2]));
        }
    }

    private double[] Solve(Func<Vec3, Vec3> topLoad)
    {
        var n = 3 * (_nodes.Count - _legs); // the lowest nodes are fixed
        var k = new double[n, n + 1];
        foreach (var (a, b, ea) in _bars)
        {
            var along = _nodes[b] - _nodes[a];
            var t = along.Unit();
            double[] c = [t.X, t.Y, t.Z];
            var stiffness = ea / along.Length;
            for (var i = 0; i < 3; i++)
            {
                for (var j = 0; j < 3; j++)
                {
                    var value = stiffness * c[i] * c[j];
                    Add(a, a, value);
                    Add(b, b, value);
                    Add(a, b, -value);
                    Add(b, a, -value);

                    void Add(int p, int q, double v)
                    {
                        if (p >= _legs && q >= _legs)
                        {
                            k[(3 * (p - _legs)) + i, (3 * (q - _legs)) + j] += v;
                        }
                    }
                }
            }
        }

        for (var node = _nodes.Count - _legs; node < _nodes.Count; node++)
        {
            var f = topLoad(_nodes[node]);
            var i = 3 * (node - _legs);
            (k[i, n], k[i + 1, n], k[i + 2, n]) = (f.X, f.Y, f.Z);
        }

        return Eliminate(k, n);
    }

    // Gaussian elimination without pivoting: a stiffness matrix is positive definite.
    private static double[] Eliminate(double[,] k, int n)
    {
        for (var p = 0; p < n; p++)
        {
            for (var row = p + 1; row < n; row++)
            {
                var f = k[row, p] / k[p, p];
                for (var c = p; f != 0 && c <= n; c++)
                {
                    k[row, c] -= f * k[p, c];
                }
            }
        }

        var x = new double[n];
        for (var row = n - 1; row >= 0; row--)
        {
            var sum = k[row, n];
            for (var c = row + 1; c < n; c++)
            {
                sum -= k[row, c] * x[c];
            }

            x[row] = sum / k[row, row];
        }

        return x;
    }
}
