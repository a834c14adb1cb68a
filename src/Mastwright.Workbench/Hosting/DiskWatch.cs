using Mastwright.Workbench.Desks;
using Microsoft.Extensions.Hosting;

namespace Mastwright.Workbench.Hosting;

/// <summary>Looks at the design file every few seconds, so that a change made in another editor shows here.</summary>
internal sealed class DiskWatch(Desk desk) : BackgroundService
{
    private static readonly TimeSpan Every = TimeSpan.FromSeconds(2);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Every);
        try
        {
            while (await timer.WaitForNextTickAsync(stoppingToken))
            {
                desk.LookAtDisk();
            }
        }
        catch (OperationCanceledException)
        {
            // The server stops.
        }
    }
}
