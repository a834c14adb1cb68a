using Mastwright.Numerics;
using Mastwright.Structure.Cables;

namespace Mastwright.Structure.Solver;

/// <summary>A 3x3 block being summed up in place, row by row.</summary>
internal ref struct Block3(Span<double> cells)
{
    private readonly Span<double> _m = cells;

    public readonly double this[int row, int column] => _m[(3 * row) + column];

    public readonly void AddIdentity(double s)
    {
        _m[0] += s;
        _m[4] += s;
        _m[8] += s;
    }

    /// <summary>Adds s·a·bᵀ.</summary>
    public readonly void AddOuter(double s, Vec3 a, Vec3 b)
    {
        double x = s * a.X, y = s * a.Y, z = s * a.Z;
        _m[0] += x * b.X;
        _m[1] += x * b.Y;
        _m[2] += x * b.Z;
        _m[3] += y * b.X;
        _m[4] += y * b.Y;
        _m[5] += y * b.Z;
        _m[6] += z * b.X;
        _m[7] += z * b.Y;
        _m[8] += z * b.Z;
    }

    /// <summary>Adds s·½(a·bᵀ + b·aᵀ).</summary>
    public readonly void AddSymmetricOuter(double s, Vec3 a, Vec3 b)
    {
        AddOuter(0.5 * s, a, b);
        AddOuter(0.5 * s, b, a);
    }

    /// <summary>Adds s times the matrix that takes w to v×w.</summary>
    public readonly void AddCross(double s, Vec3 v)
    {
        _m[1] -= s * v.Z;
        _m[2] += s * v.Y;
        _m[3] += s * v.Z;
        _m[5] -= s * v.X;
        _m[6] -= s * v.Y;
        _m[7] += s * v.X;
    }

    /// <summary>
    /// Adds s times the second derivative of f·a, a vector a turning with the rotation w (a → a + w×a + ½w×(w×a)),
    /// f fixed: ½(f aᵀ + a fᵀ) - (f·a) I.
    /// </summary>
    public readonly void AddTurnHessian(double s, Vec3 f, Vec3 a)
    {
        AddSymmetricOuter(s, f, a);
        AddIdentity(-s * f.Dot(a));
    }

    public readonly void Add(double s, in Stiffness3 k)
    {
        _m[0] += s * k.XX;
        _m[1] += s * k.XY;
        _m[2] += s * k.XZ;
        _m[3] += s * k.XY;
        _m[4] += s * k.YY;
        _m[5] += s * k.YZ;
        _m[6] += s * k.XZ;
        _m[7] += s * k.YZ;
        _m[8] += s * k.ZZ;
    }
}
