using System.Collections.Immutable;
using System.Numerics;

namespace Mastwright.Build.Sweeps.Csv;

/// <summary>Which columns of a table carry the reading and how two numbers of a row become an impedance.</summary>
internal sealed record CsvSweepShape(ColumnRole RoleA, int ColumnA, int ColumnB)
{
    public bool HasPhase => ColumnB >= 0 && !UnsignedReactance;

    public bool UnsignedReactance => RoleA == ColumnRole.ReactanceSize;

    public bool NeedsReference => RoleA is not (ColumnRole.Resistance or ColumnRole.ImpedanceSize);

    // In order of preference: what was least worked over by the analyser comes first.
    private static readonly (ColumnRole A, ColumnRole[] B)[] Pairs =
    [
        (ColumnRole.ReflectionReal, [ColumnRole.ReflectionImaginary]),
        (ColumnRole.Resistance, [ColumnRole.Reactance]),
        (ColumnRole.ReflectionSize, [ColumnRole.ReflectionPhase, ColumnRole.Phase]),
        (ColumnRole.ReflectionDb, [ColumnRole.ReflectionPhase, ColumnRole.Phase]),
        (ColumnRole.ImpedanceSize, [ColumnRole.ImpedancePhase, ColumnRole.Phase]),
        (ColumnRole.ReactanceSize, [ColumnRole.Resistance]),
    ];

    private static readonly ColumnRole[] Alone = [ColumnRole.Swr, ColumnRole.ReflectionSize, ColumnRole.ReflectionDb, ColumnRole.ReturnLoss];

    public static CsvSweepShape? Of(ImmutableArray<CsvColumn> columns)
    {
        var list = columns.ToList();
        foreach (var (a, partners) in Pairs)
        {
            var first = list.FindIndex(c => c.Role == a);
            if (first < 0) continue;
            foreach (var partner in partners)
            {
                var second = list.FindIndex(c => c.Role == partner);
                if (second >= 0) return new(a, first, second);
            }
        }
        foreach (var role in Alone)
        {
            var only = list.FindIndex(c => c.Role == role);
            if (only >= 0) return new(role, only, -1);
        }
        return null;
    }

    public double ReflectionSize(double a, double b, double referenceOhm) => RoleA switch
    {
        ColumnRole.Swr => StandingWave.Reflection(a),
        ColumnRole.ReflectionSize => Math.Abs(a),
        ColumnRole.ReflectionDb => Math.Pow(10, a / 20),
        ColumnRole.ReturnLoss => Math.Pow(10, -Math.Abs(a) / 20),
        ColumnRole.ReflectionReal => new Complex(a, b).Magnitude,
        ColumnRole.ReactanceSize => new SweepPoint(0, new(b, a)).Reflection(referenceOhm).Magnitude,
        _ => new SweepPoint(0, Impedance(a, b, referenceOhm)).Reflection(referenceOhm).Magnitude,
    };

    public Complex Impedance(double a, double b, double referenceOhm) => RoleA switch
    {
        ColumnRole.Resistance => new(a, b),
        ColumnRole.ImpedanceSize => Complex.FromPolarCoordinates(a, b),
        ColumnRole.ReflectionReal => FromReflection(new(a, b), referenceOhm),
        ColumnRole.ReflectionSize => FromReflection(Complex.FromPolarCoordinates(a, b), referenceOhm),
        ColumnRole.ReflectionDb => FromReflection(Complex.FromPolarCoordinates(Math.Pow(10, a / 20), b), referenceOhm),
        _ => throw new InvalidOperationException("This table has no phase."),
    };

    private static Complex FromReflection(Complex reflection, double referenceOhm) => referenceOhm * (1 + reflection) / (1 - reflection);
}
