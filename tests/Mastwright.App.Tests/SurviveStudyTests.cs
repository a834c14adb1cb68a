using System.Xml.Linq;
using Mastwright.Analysis;
using Mastwright.Model.Design;
using Mastwright.Report.Documents;
using Mastwright.Report.Studies;
using Mastwright.Tests.Shared;

namespace Mastwright.App.Tests;

/// <summary>Every study of sparks, strikes, static, metals and people answers for every example, completely and with its caution.</summary>
public class SurviveStudyTests
{
    private static readonly Study[] Own = [GapStudy.Study, StrikeStudy.Study, EarthStudy.Study, CoronaStudy.Study, CrossingStudy.Study, MetalsStudy.Study, PeopleStudy.Study];

    public static TheoryData<string> Examples => [.. Repository.Examples.Select(p => Path.GetFileNameWithoutExtension(p)!)];

    [Theory]
    [MemberData(nameof(Examples))]
    public void Every_study_runs_and_carries_its_caution(string example)
    {
        var reading = DesignReader.Read(File.ReadAllText(Repository.File("examples", example + ".yaml")), example, CatalogueNames.Of);
        var input = new StudyInput(reading, null, TestContext.Current.CancellationToken);
        foreach (var study in Own)
        {
            var document = study.Make(input);
            Assert.Contains(document.Blocks, b => b is Note { Kind: NoteKind.Caution });
            Assert.True(study == MetalsStudy.Study || document.Blocks.Any(b => b is Heading { Text: var text } && text.Contains(input.Station.Masts[0].Name)), study.Name);
            foreach (var table in document.Blocks.OfType<DataTable>())
            {
                Assert.All(table.Rows, r => Assert.Equal(table.Columns.Length, r.Length));
                Assert.DoesNotContain(table.Rows.SelectMany(r => r), c => c.Text.Contains("NaN"));
            }

            foreach (var figure in document.Blocks.OfType<Figure>())
            {
                var svg = XDocument.Parse(figure.Svg).Root!;
                Assert.NotNull(svg.Attribute("viewBox"));
                Assert.True(svg.Descendants().Count(e => e.Name.LocalName is "polyline" or "line" or "path") >= 2, figure.Caption);
            }
        }
    }
}
