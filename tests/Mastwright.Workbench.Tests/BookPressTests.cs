using Mastwright.Analysis;
using Mastwright.Model.Design;
using Mastwright.Model.Units;
using Mastwright.Report.Documents;
using Mastwright.Workbench.Desks;
using Mastwright.Workbench.Printing;
using Microsoft.Extensions.Logging.Abstractions;
using static Mastwright.Workbench.Tests.Waiting;

namespace Mastwright.Workbench.Tests;

/// <summary>The queue that makes books: one at a time, stopped when asked, alive after a failure, never holding many. The book is replaced by a page.</summary>
public sealed class BookPressTests
{
    private static readonly Sheet Sheet = SheetOf(Keeping.OneBand);

    [Fact]
    public async Task ABookIsMadeWithItsProgress()
    {
        var seen = new List<double>();
        await using var press = new BookPress(NullLogger<BookPress>.Instance, (input, _) =>
        {
            input.Progress!.Report(new AnalysisStep("half", 0.5));
            return Page();
        });
        press.Changed += () => seen.AddRange(press.Orders.Select(o => o.Step?.Done ?? -1));
        var id = press.Order(Sheet);
        await Until(() => press.Orders[0].State == BookState.Ready);
        var order = press.Orders.Single();
        Assert.Equal(id, order.Id);
        Assert.Equal("%PDF"u8.ToArray(), order.Pdf![..4]);
        Assert.Contains("Garden tube", System.Text.Encoding.UTF8.GetString(order.Html!));
        Assert.Contains(seen, d => d is > 0.3 and < 0.6);
    }

    [Fact]
    public async Task StoppingEndsTheOneBeingMadeAndTheOneThatWaits()
    {
        using var begun = new ManualResetEventSlim();
        await using var press = new BookPress(NullLogger<BookPress>.Instance, (input, _) =>
        {
            begun.Set();
            input.Cancellation.WaitHandle.WaitOne();
            input.Cancellation.ThrowIfCancellationRequested();
            return Page();
        });
        var (first, second) = (press.Order(Sheet)!.Value, press.Order(Sheet)!.Value);
        Assert.True(begun.Wait(10_000));
        press.Stop(second);
        Assert.Equal(BookState.Stopped, press.Orders[0].State);
        press.Stop(first);
        await Until(() => press.Orders.All(o => o.State == BookState.Stopped));
        Assert.All(press.Orders, o => Assert.Null(o.Pdf));
    }

    [Fact]
    public async Task AFailureIsToldAndTheNextBookIsMade()
    {
        var fails = true;
        await using var press = new BookPress(NullLogger<BookPress>.Instance, (_, _) => fails ? throw new InvalidOperationException("told to fail") : Page());
        press.Order(Sheet);
        await Until(() => press.Orders[0].State == BookState.Failed);
        Assert.Equal("told to fail", press.Orders[0].Problem);
        fails = false;
        press.Order(Sheet);
        await Until(() => press.Orders[0].State == BookState.Ready);
    }

    [Fact]
    public async Task TheQueueAndTheShelfAreBounded()
    {
        using var go = new ManualResetEventSlim();
        await using var press = new BookPress(NullLogger<BookPress>.Instance, (input, _) =>
        {
            go.Wait(input.Cancellation);
            return Page();
        });
        var taken = Enumerable.Range(0, 20).Count(_ => press.Order(Sheet) is not null);
        Assert.InRange(taken, BookPress.MostWaiting, BookPress.MostWaiting + 1);
        go.Set();
        await Until(() => press.Orders.All(o => !o.IsOpen));
        for (var i = 0; i < 8; i++)
        {
            press.Order(Sheet);
            await Until(() => press.Orders.All(o => !o.IsOpen));
        }

        Assert.InRange(press.Orders.Count, 1, 4);
    }

    private static Document Page() => new DocumentBuilder("Station book", "Garden tube", UnitSystem.Metric).Text("One page.").Build();

    private static Sheet SheetOf(string text)
    {
        var reading = DesignReader.Read(text, "design", CatalogueNames.Of);
        return new Sheet { Version = 1, Text = text, Reading = reading, Fingerprint = Fingerprint.Of(reading.Station!) };
    }
}
