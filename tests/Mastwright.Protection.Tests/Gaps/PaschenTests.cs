using Mastwright.Protection.Gaps;

namespace Mastwright.Protection.Tests.Gaps;

/// <summary>Paschen's law: closed form and the measured minimum.</summary>
public class PaschenTests
{
    // A 15, B 365, gamma 0.01 evaluated outside: 305.2665 V at 0.836347 torr·cm; 5034.99 V at 760 torr, 1 mm; 35509.3 V at 1 cm.
    [Fact]
    public void Closed_form()
    {
        Assert.Equal(305.2665, Paschen.Minimum.Value, 1e-4);
        Assert.Equal(305.2665, Paschen.Volts(0.836347), 1e-4);
        Assert.Equal(5034.99, Paschen.Volts(76), 0.01);
        Assert.Equal(35509.3, Paschen.Volts(760), 0.1);
        Assert.Equal(double.PositiveInfinity, Paschen.Volts(0.1));
    }

    // Measured minimum in air: 327 V (many handbooks).
    [Fact]
    public void Measured_minimum() => Assert.Equal(1, Paschen.Minimum.Value / 327, 0.10);
}
