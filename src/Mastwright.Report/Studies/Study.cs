using Mastwright.Analysis;
using Mastwright.Analysis.Radiate;
using Mastwright.Analysis.Results;
using Mastwright.Build;
using Mastwright.Build.Materials;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;
using Mastwright.Report.Sheets;

namespace Mastwright.Report.Studies;

/// <summary>What a study gets to work with.</summary>
/// <param name="Reading">The design, read without errors.</param>
/// <param name="Progress">Told what is being done; null for nobody.</param>
/// <param name="Cancellation">Stops the work.</param>
public sealed record StudyInput(DesignReading Reading, IProgress<AnalysisStep>? Progress, CancellationToken Cancellation)
{
    private StationResult? result;

    /// <summary>The whole station's result when the caller has it already; null to have it computed.</summary>
    public StationResult? Known { get; init; }

    /// <summary>The station.</summary>
    public Station Station => Reading.Station!;

    /// <summary>The user's own prices, for a study that <see cref="Study.TakesPrices"/>; null for the invented samples.</summary>
    public Reading<PriceList>? Prices { get; init; }

    /// <summary>The word chosen of the study's <see cref="Study.Choice"/>; null for its first.</summary>
    public string? Chosen { get; init; }

    /// <summary>The whole station's result, computed when first asked for.</summary>
    public StationResult Result => Known ?? (result ??= StationAnalysis.Run(Reading, Progress, Cancellation));

    /// <summary>Findings about wires with the line of the file they come from.</summary>
    public IEnumerable<Finding> Placed(IEnumerable<Finding> findings) => findings.Select(f => WirePlaces.At(f, Station, Reading.Places));
}

/// <summary>
/// One question a builder asks of a station beyond the verdict, answered with a document that the terminal, the
/// workbench and the station book show alike.
/// </summary>
/// <param name="Name">The word on the command line, e.g. <c>"tension"</c>.</param>
/// <param name="Purpose">What it answers, one line.</param>
/// <param name="Make">Answers it.</param>
public sealed record Study(string Name, string Purpose, Func<StudyInput, Document> Make)
{
    /// <summary>What a user may choose; null when there is nothing to choose.</summary>
    public StudyChoice? Choice { get; init; }

    /// <summary>Whether it counts money, with the user's own prices where there are some.</summary>
    public bool TakesPrices { get; init; }

    /// <summary>Whether it takes many seconds, so that it is made when asked for and not along with everything else.</summary>
    public bool Long { get; init; }
}

/// <summary>One choice a study offers.</summary>
/// <param name="Name">The option on the command line, without dashes.</param>
/// <param name="Purpose">What is chosen, one line.</param>
/// <param name="Words">The words to choose from; the first is taken when nothing is said.</param>
public sealed record StudyChoice(string Name, string Purpose, IReadOnlyList<string> Words);

/// <summary>Every study there is, registered here and nowhere else.</summary>
public static class Studies
{
    /// <summary>All studies, in the order of the job.</summary>
    public static IReadOnlyList<Study> All { get; } =
    [
        SoilStudy.Study,
        RadialStudy.Study,
        GuyCurrentStudy.Study,
        BandStudy.Study,
        CurrentStudy.Study,
        NearFieldStudy.Study,
        GroupStudy.Study,
        LatticeStudy.Study,
        FeedStudy.Study,
        GroupFeedStudy.Study,
        WindStudy.Study,
        GuyStudy.Study,
        TensionStudy.Study,
        RaisingStudy.Study,
        StackingStudy.Study,
        MaterialsSheet.Study,
        SetOutSheet.Study,
        CutSheet.Study,
        ConcreteSheet.Study,
        RaisingSheet.Study,
        TensionSheet.Study,
        GapStudy.Study,
        StrikeStudy.Study,
        EarthStudy.Study,
        CoronaStudy.Study,
        CrossingStudy.Study,
        MetalsStudy.Study,
        PeopleStudy.Study,
        SearchStudy.Study,
        SensitivityStudy.Study,
    ];
}
