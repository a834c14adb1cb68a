namespace Mastwright.Analysis;

/// <summary>Where an analysis stands.</summary>
/// <param name="Words">What is being done, in words.</param>
/// <param name="Done">Share done, 0 to 1.</param>
public sealed record AnalysisStep(string Words, double Done);
