using Mastwright.Analysis.Results;
using Mastwright.Model.Design;
using Mastwright.Tests.Shared;

namespace Mastwright.Analysis.Tests;

/// <summary>The example stations, each analysed once for all tests.</summary>
internal static class Examples
{
    private static readonly Dictionary<string, Lazy<StationResult>> Results = Repository.Examples
        .ToDictionary(p => Path.GetFileNameWithoutExtension(p), p => new Lazy<StationResult>(() => StationAnalysis.Run(Read(File.ReadAllText(p)))));

    public static IEnumerable<string> Names => Results.Keys;

    public static StationResult Result(string name) => Results[name].Value;

    public static DesignReading Read(string text)
    {
        var reading = DesignReader.Read(text, "test", CatalogueNames.Of);
        Assert.True(reading.Ok, string.Join("; ", reading.Findings.Select(f => f.Message)));
        return reading;
    }
}
