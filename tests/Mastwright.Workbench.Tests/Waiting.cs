namespace Mastwright.Workbench.Tests;

/// <summary>Waits for what happens in the background.</summary>
internal static class Waiting
{
    /// <summary>Waits until something holds; fails when it does not within the time.</summary>
    public static async Task Until(Func<bool> reached, int seconds = 20)
    {
        for (var i = 0; i < seconds * 100 && !reached(); i++)
        {
            await Task.Delay(10, TestContext.Current.CancellationToken);
        }

        Assert.True(reached());
    }
}
