using Mastwright.Circuits.Ac;

namespace Mastwright.Circuits.Transient;

/// <summary>The part of a step being solved.</summary>
internal enum StageKind
{
    /// <summary>One backward Euler step, used right after a jump because it needs no derivative from before it.</summary>
    Euler,

    /// <summary>The trapezoidal first part of a TR-BDF2 step, to t + γh.</summary>
    Trapezoid,

    /// <summary>The second part, second-order backward differences over t, t + γh, t + h.</summary>
    Backward,
}

/// <summary>
/// One stage of a TR-BDF2 step (Bank and others, IEEE Trans. Electron Devices, 1985; Hosea and Shampine, Applied
/// Numerical Mathematics, 1996, from memory). With γ = 2 - √2 both stages share one matrix: f = k·x - k·x̂, k = 2/(γh).
/// </summary>
/// <param name="Kind">Which part.</param>
/// <param name="K">k in the relation f = k·(x - x̂), per second.</param>
/// <param name="TimeS">Time at the stage's end, seconds.</param>
/// <param name="LengthS">Time from the step's start, or for the second part from t + γh, to the stage's end.</param>
internal readonly record struct Stage(StageKind Kind, double K, double TimeS, double LengthS)
{
    public static readonly double Gamma = 2 - Math.Sqrt(2);

    private static readonly double A = 1 / (Gamma * (2 - Gamma));
    private static readonly double B = (1 - Gamma) * (1 - Gamma) / (Gamma * (2 - Gamma));
    private static readonly double Kappa = ((-3 * Gamma * Gamma) + (4 * Gamma) - 2) / (12 * (2 - Gamma));

    public static Stage Euler(double t, double h) => new(StageKind.Euler, 1 / h, t + h, h);

    public static Stage Trapezoid(double t, double h) => new(StageKind.Trapezoid, 2 / (Gamma * h), t + (Gamma * h), Gamma * h);

    public static Stage Backward(double t, double h) => new(StageKind.Backward, 2 / (Gamma * h), t + h, (1 - Gamma) * h);

    /// <summary>x̂ of f = k·(x - x̂).</summary>
    public double Past(in StateTrack s) => Kind switch
    {
        StageKind.Euler => s.X0,
        StageKind.Trapezoid => s.X0 + (s.F0 / K),
        _ => (A * s.X1) - (B * s.X0),
    };

    /// <summary>Estimate of the local error of a whole step.</summary>
    public static double Error(in StateTrack s, double h) =>
        2 * Kappa * h * ((s.F0 / Gamma) - (s.F1 / (Gamma * (1 - Gamma))) + (s.F2 / (1 - Gamma)));
}

/// <summary>A charge or flux x with its derivative f (current or voltage) at the start, the middle and the end of a step.</summary>
internal struct StateTrack
{
    public double X0, F0, X1, F1, X2, F2;

    public void Set(in Stage stage, double x)
    {
        var f = stage.K * (x - stage.Past(this));
        if (stage.Kind == StageKind.Trapezoid)
            (X1, F1) = (x, f);
        else
            (X2, F2) = (x, f);
    }

    public void Accept() => (X0, F0) = (X2, F2);
}

/// <summary>The real nodal system of one stage.</summary>
internal sealed class StageSystem(int size)
{
    public DenseLu<double> Matrix { get; } = new(size);

    public double[] X { get; } = new double[size];

    public void Clear()
    {
        Matrix.Clear();
        Array.Clear(X);
    }

    public void Add(int row, int column, double value)
    {
        if (row >= 0 && column >= 0)
            Matrix.Add(row, column, value);
    }

    /// <summary>Current pushed into a row from outside.</summary>
    public void Push(int row, double value)
    {
        if (row >= 0)
            X[row] += value;
    }

    public void Conductance(int a, int b, double g)
    {
        Add(a, a, g);
        Add(b, b, g);
        Add(a, b, -g);
        Add(b, a, -g);
    }

    public void Branch(int a, int b, int branch)
    {
        Add(a, branch, 1);
        Add(b, branch, -1);
        Add(branch, a, 1);
        Add(branch, b, -1);
    }

    public double Voltage(int a, int b) => (a < 0 ? 0 : X[a]) - (b < 0 ? 0 : X[b]);
}
