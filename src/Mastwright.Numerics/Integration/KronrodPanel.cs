using System.Numerics;

namespace Mastwright.Numerics.Integration;

/// <summary>
/// One interval integrated by the 21-point Kronrod rule, its error judged by the 10-point Gauss rule inside it. Nodes,
/// weights and error rule: R. Piessens et al., QUADPACK, Springer 1983, routine qk21.
/// </summary>
internal sealed class KronrodPanel
{
    private static readonly double[] Nodes =
    [
        0.995657163025808080735527280689003, 0.973906528517171720077964012084452, 0.930157491355708226001207180059508,
        0.865063366688984510732096688423493, 0.780817726586416897063717578345042, 0.679409568299024406234327365114874,
        0.562757134668604683339000099272694, 0.433395394129247190799265943165784, 0.294392862701460198131126603103866,
        0.148874338981631210884826001129720, 0,
    ];

    private static readonly double[] Kronrod =
    [
        0.011694638867371874278064396062192, 0.032558162307964727478818972459390, 0.054755896574351996031381300244580,
        0.075039674810919952767043140916190, 0.093125454583697605535065465083366, 0.109387158802297641899210590325805,
        0.123491976262065851077958109831074, 0.134709217311473325928054001771707, 0.142775938577060080797094273138717,
        0.147739104901338491374841515972068, 0.149445554002916905664936468389821,
    ];

    private static readonly double[] Gauss =
    [
        0.066671344308688137593568809893332, 0.149451349150580593145776339657697, 0.219086362515982043995534934228163,
        0.269266719309996355091226921569469, 0.295524224714752870173892994651338,
    ];

    private KronrodPanel(double a, double b, Complex[] values, double[] errors)
    {
        A = a;
        B = b;
        Values = values;
        Errors = errors;
    }

    public static int Points => 21;

    public double A { get; }

    public double B { get; }

    public Complex[] Values { get; }

    public double[] Errors { get; }

    /// <summary>Whether halving would still give new points.</summary>
    public bool CanSplit => Math.Abs(B - A) > 1e-14 * Math.Max(Math.Abs(A), Math.Abs(B));

    public static KronrodPanel Over(VectorIntegrand f, int count, double a, double b)
    {
        var (middle, half) = ((a + b) / 2, (b - a) / 2);
        var samples = new Complex[Points * count];
        for (var i = 0; i < Points; i++)
            f(middle + (half * Node(i)), samples.AsSpan(i * count, count));

        var values = new Complex[count];
        var errors = new double[count];
        for (var c = 0; c < count; c++)
        {
            var (fine, coarse, size) = (Complex.Zero, Complex.Zero, 0.0);
            for (var i = 0; i < Points; i++)
            {
                var y = samples[(i * count) + c];
                fine += Kronrod[Mirror(i)] * y;
                size += Kronrod[Mirror(i)] * Complex.Abs(y);
                if (i % 2 == 1)
                    coarse += Gauss[Mirror(i) / 2] * y;
            }

            var spread = 0.0;
            for (var i = 0; i < Points; i++)
                spread += Kronrod[Mirror(i)] * Complex.Abs(samples[(i * count) + c] - (fine / 2));
            values[c] = half * fine;
            errors[c] = Math.Abs(half) * Error(Complex.Abs(fine - coarse), spread, size);
        }

        return new(a, b, values, errors);
    }

    private static double Error(double difference, double spread, double size)
    {
        var error = spread > 0 && difference > 0 ? spread * Math.Min(1, Math.Pow(200 * difference / spread, 1.5)) : difference;
        return Math.Max(error, 50 * 1.1e-16 * size);
    }

    private static int Mirror(int i) => i <= 10 ? i : 20 - i;

    private static double Node(int i) => i <= 10 ? Nodes[i] : -Nodes[20 - i];
}
