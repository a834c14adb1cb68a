using Mastwright.Structure.Solver;
using Mastwright.Structure.Tests.Support;

namespace Mastwright.Structure.Tests.Solver;

/// <summary>
/// Two complete masts against an independent planar solution (geometrically exact beam, 0.125 m elements, exact
/// catenaries), itself cross-checked with CalculiX. Tolerances come from the printed digits and the difference in mesh.
/// </summary>
public class TwoGuyedMastsTests
{
    private static readonly SolverOptions Fine = new() { LongestElementM = 0.25 };

    [Fact]
    public void Mast_A_in_still_air()
    {
        var s = MastSolver.Solve(ReferenceMasts.MastA(180, 60, 300), ReferenceMasts.Still, Fine);
        Assert.Equal(Outcome.Stable, s.Outcome);
        Near.Absolute(-0.419e-3, s.NodeAt(15).DisplacementM.Z, 0.6e-6, "uz");
        Near.Absolute(2928.20, s.Guys[0].AnchorTensionN, 0.02, "anchor");
        Near.Absolute(2954.67, s.Guys[0].MastTensionN, 0.02, "mast");
        Near.Absolute(9779.84, s.Foot.ReactionN.Z, 0.05, "foot");
    }

    [Fact]
    public void Mast_B_in_still_air()
    {
        var s = MastSolver.Solve(ReferenceMasts.MastB(180, 60, 300), ReferenceMasts.Still, Fine);
        Near.Absolute(-0.580e-3, s.NodeAt(14).DisplacementM.Z, 0.6e-6, "uz 14");
        Near.Absolute(-0.870e-3, s.NodeAt(28).DisplacementM.Z, 0.6e-6, "uz 28");
        Near.Absolute(2911.42, s.Guy("14/60").AnchorTensionN, 0.03, "lower");
        Near.Absolute(2968.34, s.Guy("28/60").MastTensionN, 0.03, "upper");
        Near.Absolute(19111.22, s.Foot.ReactionN.Z, 0.1, "foot");
    }

    [Theory]
    [InlineData(180, 60, 19.971, -5.525, -30.197, -113.632, 185.715, 1333.5, 3845.6, -712.39, 8639.96, 4409.00, 1507.00)]
    [InlineData(0, 120, 23.623, -5.709, -30.550, -111.750, 190.532, 1333.0, 3906.4, -709.99, 8848.43, 620.76, 3522.61)]
    public void Mast_A_in_wind(double alone, double pair, double ux, double uz, double turn, double top, double bow, double support, double largest, double rx, double rz, double tAlone, double tPair)
    {
        var mast = ReferenceMasts.MastA(alone, pair, 360 - pair);
        var s = MastSolver.Solve(mast, ReferenceMasts.WindA(mast), Fine);
        Assert.Equal(Outcome.Stable, s.Outcome);
        var at = s.NodeAt(15);
        Near.Absolute(ux, 1e3 * at.DisplacementM.X, 0.03, "ux");
        Near.Absolute(uz, 1e3 * at.DisplacementM.Z, 0.01, "uz");
        Near.Absolute(turn, 1e3 * at.RotationRad.Y, 0.02, "turn");
        Near.Absolute(top, 1e3 * s.NodeAt(20).DisplacementM.X, 0.12, "top");
        Near.Absolute(bow, 1e3 * s.NodeAt(8).DisplacementM.X, 0.2, "bow");
        Near.Relative(support, s.Sections.Where(x => Math.Abs(x.HeightM - 15) < 1e-6).Max(x => x.BendingMomentNm), 1e-3, "moment at guys");
        Near.Relative(largest, s.LargestMoment!.BendingMomentNm, 1e-3, "largest moment");
        Near.Relative(rx, s.Foot.ReactionN.X, 1e-3, "Rx");
        Near.Relative(rz, s.Foot.ReactionN.Z, 1e-3, "Rz");
        Near.Relative(tAlone, s.Guy($"15/{alone}").AnchorTensionN, 1.5e-3, "lone guy");
        Near.Relative(tPair, s.Guy($"15/{pair}").AnchorTensionN, 1.5e-3, "pair guy");
    }

    [Theory]
    [InlineData(180, 60, 21.557, 2.292, 35.580, -8.258, 19.365, 3545.3, 297.3, -553.13, 21214.64, 5748.97, 1919.23, 5221.69, 2645.39)]
    [InlineData(0, 120, 23.143, 2.168, 33.111, -8.619, 16.174, 3508.6, 297.2, -553.53, 21135.00, 681.32, 4507.54, 1712.16, 4288.96)]
    public void Mast_B_in_wind(double alone, double pair, double ux, double turn, double uxUpper, double turnUpper, double top, double m14, double m28, double rx, double rz, double t14Alone, double t14Pair, double t28Alone, double t28Pair)
    {
        var mast = ReferenceMasts.MastB(alone, pair, 360 - pair);
        var s = MastSolver.Solve(mast, ReferenceMasts.WindB(mast), Fine);
        Near.Absolute(ux, 1e3 * s.NodeAt(14).DisplacementM.X, 0.01, "ux 14");
        Near.Absolute(turn, 1e3 * s.NodeAt(14).RotationRad.Y, 0.005, "turn 14");
        Near.Absolute(uxUpper, 1e3 * s.NodeAt(28).DisplacementM.X, 0.01, "ux 28");
        Near.Absolute(turnUpper, 1e3 * s.NodeAt(28).RotationRad.Y, 0.005, "turn 28");
        Near.Absolute(top, 1e3 * s.NodeAt(30).DisplacementM.X, 0.02, "top");
        Near.Relative(m14, s.LargestMoment!.BendingMomentNm, 1e-3, "moment 14");
        Near.Relative(m28, s.Sections.Where(x => Math.Abs(x.HeightM - 28) < 1e-6).Max(x => x.BendingMomentNm), 2e-3, "moment 28");
        Near.Relative(rx, s.Foot.ReactionN.X, 1e-3, "Rx");
        Near.Relative(rz, s.Foot.ReactionN.Z, 1e-3, "Rz");
        Near.Relative(t14Alone, s.Guy($"14/{alone}").AnchorTensionN, 1e-3, "14 alone");
        Near.Relative(t14Pair, s.Guy($"14/{pair}").AnchorTensionN, 1e-3, "14 pair");
        Near.Relative(t28Alone, s.Guy($"28/{alone}").AnchorTensionN, 1e-3, "28 alone");
        Near.Relative(t28Pair, s.Guy($"28/{pair}").AnchorTensionN, 1e-3, "28 pair");
    }

    /// <summary>The linear beam without bow shortening gives 5072 N upwind on mast A; the true answer is an eighth lower.</summary>
    [Fact]
    public void Bow_shortening_relieves_the_guys()
    {
        var mast = ReferenceMasts.MastA(180, 60, 300);
        var s = MastSolver.Solve(mast, ReferenceMasts.WindA(mast));
        Assert.InRange(s.Guy("15/180").AnchorTensionN, 4300, 4500);
        Assert.InRange(s.NodeAt(15).DisplacementM.Z, -6e-3, -5e-3);
    }
}
