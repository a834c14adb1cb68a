using Mastwright.Analysis;
using Mastwright.Analysis.Results;
using Mastwright.Model.Design;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Studies;

/// <summary>What a study gets to work with.</summary>
/// <param name="Reading">The design, read without errors.</param>
/// <param name="Progress">Told what is being done; null for nobody.</param>
/// <param name="Cancellation">Stops the work.</param>
public sealed record StudyInput(DesignReading Reading, IProgress<AnalysisStep>? Progress, CancellationToken Cancellation)
{
    private StationResult? result;

    /// <summary>The station.</summary>
    public Station Station => Reading.Station!;

    /// <summary>The whole station's result, computed when first asked for.</summary>
    public StationResult Result => result ??= StationAnalysis.Run(Reading, Progress, Cancellation);
}

/// <summary>
/// One question a builder asks of a station beyond the verdict, answered with a document that the terminal, the
/// workbench and the station book show alike.
/// </summary>
/// <param name="Name">The word on the command line, e.g. <c>"tension"</c>.</param>
/// <param name="Purpose">What it answers, one line.</param>
/// <param name="Make">Answers it.</param>
public sealed record Study(string Name, string Purpose, Func<StudyInput, Document> Make);

/// <summary>Every study there is, registered here and nowhere else.</summary>
public static class Studies
{
    /// <summary>All studies, in the order of the job.</summary>
    public static IReadOnlyList<Study> All { get; } =
    [
        FeedStudy.Study,
        TensionStudy.Study,
        RaisingStudy.Study,
    ];
}
