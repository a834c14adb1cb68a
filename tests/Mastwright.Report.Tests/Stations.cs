using Mastwright.Analysis;
using Mastwright.Model.Design;
using Mastwright.Report.Book;
using Mastwright.Report.Documents;
using Mastwright.Report.Studies;
using Mastwright.Tests.Shared;

namespace Mastwright.Report.Tests;

/// <summary>The example stations and their books, each made once for all tests.</summary>
internal static class Stations
{
    public static readonly DateOnly Day = new(2027, 5, 1);

    private static readonly Dictionary<string, Lazy<StudyInput>> Inputs = Repository.Examples
        .ToDictionary(p => Path.GetFileNameWithoutExtension(p), p => new Lazy<StudyInput>(() => Read(File.ReadAllText(p))));

    private static readonly Dictionary<string, Lazy<Document>> Books = Inputs.ToDictionary(i => i.Key, i => new Lazy<Document>(() => StationBook.Of(i.Value.Value)));

    public static StudyInput Input(string name) => Inputs[name].Value;

    public static Document Book(string name) => Books[name].Value;

    public static string Text(string name) => File.ReadAllText(Repository.File("examples", name + ".yaml"));

    public static StudyInput Read(string text)
    {
        var reading = DesignReader.Read(text, "test", CatalogueNames.Of);
        Assert.True(reading.Ok, string.Join("; ", reading.Findings.Select(f => f.Message)));
        return new StudyInput(reading, null, TestContext.Current.CancellationToken);
    }
}
