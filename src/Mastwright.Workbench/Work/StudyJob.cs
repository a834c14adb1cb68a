using Mastwright.Analysis;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;

namespace Mastwright.Workbench.Work;

/// <summary>How far a piece of long work has come.</summary>
public enum JobState
{
    /// <summary>Another piece of work is done first.</summary>
    Waiting,

    /// <summary>Being worked out.</summary>
    Running,

    /// <summary>Done.</summary>
    Done,

    /// <summary>Stopped by the reader, or overtaken by a newer question.</summary>
    Stopped,

    /// <summary>The program itself failed.</summary>
    Failed,
}

/// <summary>A piece of long work at one moment. Never changes: a new moment is a new job.</summary>
/// <param name="Key">What is worked out, e.g. <c>"study tension"</c>: a newer question with the same key takes its place.</param>
/// <param name="Title">The same in words.</param>
/// <param name="Fingerprint">Fingerprint of the design it is worked out for.</param>
public sealed record StudyJob(string Key, string Title, string Fingerprint)
{
    /// <summary>Number of the question; a newer one has a higher number.</summary>
    public int Number { get; init; }

    /// <summary>How far it has come.</summary>
    public JobState State { get; init; } = JobState.Waiting;

    /// <summary>What is being done; null before it began.</summary>
    public AnalysisStep? Step { get; init; }

    /// <summary>What came of it, when that is a document.</summary>
    public Document? Document { get; init; }

    /// <summary>What came of it, or what is known so far, when that is something else.</summary>
    public object? Found { get; init; }

    /// <summary>What went wrong; null when nothing did.</summary>
    public Finding? Failure { get; init; }

    /// <summary>Whether more will come.</summary>
    public bool Open => State is JobState.Waiting or JobState.Running;
}
