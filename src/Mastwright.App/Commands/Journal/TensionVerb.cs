using System.CommandLine;
using System.Globalization;
using Mastwright.Analysis.Tune;
using Mastwright.Journal.Entries;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;
using Mastwright.Report.Keep;
using Mastwright.Report.Terminal;

namespace Mastwright.App.Commands.Journal;

/// <summary><c>journal tension</c>: a tension from what was read beside the guy.</summary>
internal static class TensionVerb
{
    private static readonly Option<string?> Guy = new("--guy") { Description = "The guy by level and anchor, e.g. 1/north.", Required = true };
    private static readonly Dictionary<string, Option<string?>> Ways = TensionReadings.Ways.ToDictionary(w => w.Key, w => new Option<string?>("--" + w.Key) { Description = $"{Meaning(w.Key)}, e.g. \"{w.Value}\"." });

    public static Command Create() => JournalVerb.Adding("tension", "Note the tension of a guy from a gauge, pulse, swing, pitch, sag, tangent or side pull.", Run, [Guy, .. Ways.Values]);

    private static int Run(JournalVerb verb)
    {
        var given = Ways.Where(w => verb.Written.Text(w.Value) is not null).ToList();
        if (given.Count != 1)
        {
            return JournalVerb.Refuse(new Finding("reading-one", Severity.Error, given.Count == 0 ? "No reading is given." : "Several readings are given; each is an entry of its own.", Written.Place(string.Join(", ", given.Select(g => g.Value.Name))),
                Allowed: string.Join(", ", Ways.Values.Select(w => w.Name)), WayOut: "Give one of these."));
        }

        var mast = verb.Mast();
        var (id, at, author, text, weather) = verb.Common();
        if (mast is null || verb.Written.Problems.Count > 0)
        {
            return JournalVerb.Refuse([.. verb.Written.Problems]);
        }

        var (standing, falls) = Shared.WithProgress(_ => StandingMast.Of(verb.Station, mast, weather.TemperatureK ?? verb.Station.Site.TensioningTemperatureK, verb.Cancellation));
        if (standing is null)
        {
            return JournalVerb.Refuse(falls!);
        }

        var (name, unknown) = GuyNames.Find([.. standing.Guys.Select(g => g.Name)], verb.Written.Text(Guy)!, mast.Name);
        if (unknown is not null)
        {
            return JournalVerb.Refuse(unknown with { Place = Written.Place("--guy") });
        }

        var guy = standing.Guys.First(g => g.Name == name);
        var (way, raw) = (given[0].Key, verb.Written.Text(given[0].Value)!);
        var estimate = TensionReadings.Estimate(guy, way, raw);
        if (estimate.Value is not { } found)
        {
            return JournalVerb.Refuse([.. estimate.Findings]);
        }

        FindingsView.Write(Shared.Messages(), estimate.Findings);
        var added = verb.Add(() => new TensionEntry(id, at, mast.Name, author, text, weather, GuyNames.Short(guy.Name), found.AtAnchor.Value, found.UncertaintyN, found.Method, raw.ToString(CultureInfo.InvariantCulture)));
        if (added == ExitCode.Pass)
        {
            TerminalDocument.Write(Shared.Output(), TensionReadingDocument.Of(verb.Station, guy, found, weather.TemperatureK));
        }

        return added;
    }

    private static string Meaning(string way) => way switch
    {
        "gauge" => "Spring gauge in line at the anchor",
        "pulse" => "Returns of a sideways pulse and their time together",
        "swing" => "Sideways swings of the whole guy and their time together",
        "pitch" => "Pitch of the plucked guy",
        "sag" => "Vertical sag at half span",
        "side-pull" => "Sideways pull, how far the guy gives, and how far from the anchor along it",
        _ => "Where the tangent at the anchor meets the mast, below the guy's pin",
    };
}
