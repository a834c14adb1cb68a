using Mastwright.Workbench.Desks;
using Mastwright.Workbench.Keeping;
using Microsoft.Extensions.Hosting;

namespace Mastwright.Workbench.Hosting;

/// <summary>Looks at the design file and the journal every few seconds, so that a change made by another program shows here.</summary>
internal sealed class DiskWatch(Desk desk, KeepWatch upkeep) : BackgroundService
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
                upkeep.Look();
            }
        }
        catch (OperationCanceledException)
        {
            // The server stops.
        }
    }
}
