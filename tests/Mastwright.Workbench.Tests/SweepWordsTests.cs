using Mastwright.Analysis;
using Mastwright.Analysis.Radiate;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Tests.Shared;
using Mastwright.Workbench.Pages;

namespace Mastwright.Workbench.Tests;

/// <summary>What is said under a sweep.</summary>
public class SweepWordsTests
{
    [Fact]
    public void A_curve_that_did_not_settle_says_so_under_the_plot_and_what_the_verdict_said_is_not_said_twice()
    {
        var known = new Finding("wires", Severity.Note, "Known already.");
        var result = QuickSolver.Nothing(DesignReader.Read(File.ReadAllText(Repository.File("examples", "tube-12m.yaml")), "design", CatalogueNames.Of)) with { Findings = [known] };
        var sweep = new BandSweepResult("T", "40 m", []) { Findings = [known, new Finding("sweep-unsettled", Severity.Warning, "It did not settle.", Value: "3.4 %", Allowed: "0.5 %")] };

        Assert.Equal("It did not settle. (Estimated error 3.4 %, asked 0.5 %.)", FeedPage.Said(sweep, result));
        Assert.Equal("", FeedPage.Said(sweep with { Findings = [known] }, result));
    }
}
