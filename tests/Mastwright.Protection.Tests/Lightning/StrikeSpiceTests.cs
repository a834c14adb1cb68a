using Mastwright.Protection.Tests.Support;

namespace Mastwright.Protection.Tests.Lightning;

/// <summary>A whole strike, every part of it, against ngspice.</summary>
public class StrikeSpiceTests
{
    [Fact]
    public void A_whole_strike_agrees_with_ngspice()
    {
        if (StrikeDeck.Which("ngspice") is not { } ngspice)
        {
            Assert.Skip("ngspice is not installed.");
            return;
        }

        var deck = new StrikeDeck(StrikeDeck.Usual);
        var measured = deck.RunSpice(ngspice);
        var raw = deck.RunOurs();
        Assert.Empty(raw.Findings);
        Assert.Equal(1, raw.Voltage("plate").Max() / measured["top_plate"], 0.01);
        Assert.Equal(1, raw.Voltage("entry").Max() / measured["top_entry"], 0.01);
        Assert.Equal(1, raw.At(raw.Voltage("plate"), 8e-6) / measured["top_late"], 0.01);
        Assert.Equal(1, raw.Voltage("base").Max() / measured["top_base"], 0.01);
        Assert.Equal(1, raw.VoltageAcross("radio input").Max(Math.Abs) / measured["top_radio"], 0.02);
    }
}
