using Mastwright.Analysis;
using Mastwright.Workbench.Work;
using Microsoft.Extensions.Logging.Abstractions;
using static Mastwright.Workbench.Tests.Waiting;

namespace Mastwright.Workbench.Tests;

/// <summary>Long work in the background: one at a time, newest wins, stops, and lives on after a failure.</summary>
public sealed class StudyQueueTests
{
    [Fact]
    public async Task ANewerQuestionOfTheSameKindStopsTheOlder()
    {
        await using var queue = new StudyQueue(NullLogger<StudyQueue>.Instance);
        using var begun = new ManualResetEventSlim();
        var stopped = false;
        queue.Ask("a", "A", "1", talk =>
        {
            begun.Set();
            talk.Cancellation.WaitHandle.WaitOne();
            stopped = true;
            talk.Cancellation.ThrowIfCancellationRequested();
            return 1;
        });
        begun.Wait(TestContext.Current.CancellationToken);
        queue.Ask("a", "A", "2", _ => 2);
        await Until(() => queue.Of("a")!.State == JobState.Done);
        Assert.True(stopped);
        Assert.Equal("2", queue.Of("a")!.Fingerprint);
        Assert.Equal(2, queue.Of("a")!.Found);
    }

    [Fact]
    public async Task OtherWorkWaitsItsTurnAndIsStoppedWhileWaiting()
    {
        await using var queue = new StudyQueue(NullLogger<StudyQueue>.Instance);
        using var let = new ManualResetEventSlim();
        queue.Ask("a", "A", "1", _ =>
        {
            let.Wait();
            return 1;
        });
        queue.Ask("b", "B", "1", _ => 2);
        queue.Ask("c", "C", "1", _ => 3);
        Assert.Equal(JobState.Waiting, queue.Of("b")!.State);
        queue.Cancel("b");
        let.Set();
        await Until(() => queue.Of("c")!.State == JobState.Done);
        Assert.Equal(JobState.Done, queue.Of("a")!.State);
        Assert.Equal(JobState.Stopped, queue.Of("b")!.State);
    }

    [Fact]
    public async Task WhatWasFoundBeforeAStopStays()
    {
        await using var queue = new StudyQueue(NullLogger<StudyQueue>.Instance);
        using var begun = new ManualResetEventSlim();
        queue.Ask("a", "A", "1", talk =>
        {
            talk.Progress.Report(new AnalysisStep("half way", 0.5));
            talk.Found("half");
            begun.Set();
            talk.Cancellation.WaitHandle.WaitOne();
            talk.Cancellation.ThrowIfCancellationRequested();
            return "whole";
        });
        begun.Wait(TestContext.Current.CancellationToken);
        Assert.Equal(0.5, queue.Of("a")!.Step!.Done);
        queue.Cancel("a");
        Assert.Equal(JobState.Stopped, queue.Of("a")!.State);
        Assert.Equal("half", queue.Of("a")!.Found);
    }

    [Fact]
    public async Task AFailureIsToldAndTheNextWorkIsDone()
    {
        await using var queue = new StudyQueue(NullLogger<StudyQueue>.Instance);
        queue.Ask("a", "A", "1", _ => throw new InvalidOperationException("broken"));
        queue.Ask("b", "B", "1", _ => 2);
        await Until(() => queue.Of("b")!.State == JobState.Done);
        Assert.Equal(JobState.Failed, queue.Of("a")!.State);
        Assert.Equal("broken", queue.Of("a")!.Failure!.Value);
    }
}
