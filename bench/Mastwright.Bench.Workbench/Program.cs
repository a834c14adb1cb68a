using System.Globalization;
using Mastwright.Bench.Workbench;

// Usage: [all|edits|phases|first|sessions|soak] [edits]. Prints times as measured, with the machine's load before and after.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
var what = args.ElementAtOrDefault(0) ?? "all";
var edits = args.ElementAtOrDefault(1) is { } n ? int.Parse(n, CultureInfo.InvariantCulture) : 40;
Console.WriteLine($"{Environment.ProcessorCount} cores; load at the start {Machine.Load()}");
if (what is "all" or "phases")
{
    Phases.Run(edits);
}

if (what is "all" or "first")
{
    await FirstPage.Run();
}

if (what is "all" or "edits")
{
    await EditToVerdict.Run(edits);
}

if (what is "all" or "sessions")
{
    await Sessions.Run();
}

if (what is "all" or "soak")
{
    await Soak.Run();
}

Console.WriteLine($"load at the end {Machine.Load()}");
