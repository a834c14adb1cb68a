using System.CommandLine;
using Mastwright.Analysis;
using Mastwright.App.Files;
using Mastwright.Model.Design;
using Mastwright.Model.Schema;
using Mastwright.Model.Text;
using Mastwright.Model.Trails;
using Mastwright.Report.Feed;
using Mastwright.Report.Terminal;

namespace Mastwright.App.Commands;

/// <summary><c>export</c>: a network of the station in open formats, for other tools.</summary>
internal static class ExportCommand
{
    private static readonly Argument<string?> Design = Shared.FileArgument();
    private static readonly Option<string?> Band = new("--band") { Description = "Name of the band whose network is written." };
    private static readonly Option<string?> MastName = new("--mast") { Description = "The mast; needed when the station has several." };
    private static readonly Option<string?> GroupName = new("--group") { Description = "Name of the group whose feed is written, instead of a band." };
    private static readonly Option<string?> Netlist = new Option<string?>("--netlist") { Description = "File for the SPICE netlist, mast and losses as at the design frequency." }.NamesFile();
    private static readonly Option<string?> AtLine = new Option<string?>("--at-line") { Description = "File (.s1p) for what the line sees over the band, in the Touchstone format." }.NamesFile();
    private static readonly Option<string?> Ports = new Option<string?>("--ports") { Description = "File (.s2p; for a group .s3p and up) for the network alone, in the Touchstone format." }.NamesFile();

    private static readonly Option<string?> Drawing = new Option<string?>("--drawing") { Description = "File (.svg) for the schematic." }.NamesFile();
    private static readonly Option<string?> Smith = new Option<string?>("--smith") { Description = "File (.svg) for the path of the match over the Smith chart." }.NamesFile();
    private static readonly Option<string?> Network = new Option<string?>("--network") { Description = "Another kind of network than the one used; left out, the one used." }.AcceptOnlyFromAmong([.. Kinds().Select(k => k.Word)]);

    public static Command Create()
    {
        var command = new Command("export", "Write the network of a band, or the feed of a group, as SPICE netlist, Touchstone files and drawings.") { Design, Band, MastName, GroupName, Network, Netlist, AtLine, Ports, Drawing, Smith };
        command.SetAction((parsed, cancellation) => Task.FromResult(Run(parsed, cancellation)));
        return command;
    }

    private static int Run(ParseResult parsed, CancellationToken cancellation)
    {
        try
        {
            var reading = DesignFile.Read(parsed.GetValue(Design));
            if (!reading.Ok)
            {
                return Refuse(reading.Findings);
            }

            var station = reading.Station!;
            var written = new Written(parsed);
            var (band, group) = (written.Text(Band), written.Text(GroupName));
            var wanted = new[] { Netlist, AtLine, Ports, Drawing, Smith }.Select(o => (Option: o, Path: written.Text(o))).Where(w => w.Path is not null).ToList();
            if (wanted.Count == 0)
            {
                return Refuse([new Finding("export-nothing", Severity.Error, "No file to write was named.", Written.Place("export"), Allowed: "--netlist, --at-line, --ports, --drawing, --smith", WayOut: "Name at least one, e.g. --netlist 80m.cir.")]);
            }

            NetworkFiles? files;
            IEnumerable<Finding> findings;
            if (group is not null)
            {
                if (Unknown("--group", group, [.. station.Groups.Select(g => g.Name)]) is { } fault)
                {
                    return Refuse([fault]);
                }

                (files, findings) = Shared.WithProgress(progress => NetworkFiles.OfGroup(station, group, progress, cancellation));
            }
            else
            {
                var (mast, problem) = MastChoice.Of(station, written.Text(MastName));
                if ((problem ?? Unknown("--band", band, [.. station.Bands.Select(b => b.Title)])) is { } fault)
                {
                    return Refuse([fault]);
                }

                var asked = Asked(reading, written.Text(Network), band!, mast!.Name);
                (files, findings) = Shared.WithProgress(progress => NetworkFiles.OfBand(StationAnalysis.Run(asked, progress, cancellation), station.Masts.IndexOf(mast), band!, cancellation));
            }

            if (files is null)
            {
                return Refuse(findings);
            }

            foreach (var (option, path) in wanted)
            {
                var text = option == Netlist ? files.Netlist : option == AtLine ? files.AtLine : option == Ports ? files.Ports : option == Drawing ? files.Drawing : files.Smith;
                if (text is null)
                {
                    return Refuse([new Finding("export-at-line", Severity.Error, "The feed of a group has no such file.", Written.Place(option.Name), path, "--netlist, --ports, --drawing", $"Leave {option.Name} out.")]);
                }

                if (OutputFile.Write(path!, text) is { } fault)
                {
                    return Refuse([fault]);
                }

                Console.WriteLine($"{path}: {files.Title}{(option == Ports ? $", {files.PortCount} ports" : "")}");
            }

            return ExitCode.Pass;
        }
        catch (OperationCanceledException)
        {
            Console.Error.WriteLine("Stopped.");
            return ExitCode.Cancelled;
        }
    }

    // Another kind is asked for as the design would ask for it, so that everything else follows.
    private static DesignReading Asked(DesignReading reading, string? word, string band, string mast)
    {
        if (word is null)
        {
            return reading;
        }

        var feed = reading.Station!.Feed;
        var spec = new NetworkSpec { Band = band, Mast = mast, Network = Kinds().First(k => k.Word == word).Value };
        return reading with { Station = reading.Station with { Feed = feed with { Networks = [.. feed.Networks.Where(n => n.Band != band || n.Mast != mast), spec] } } };
    }

    private static IEnumerable<(string Word, NetworkWord Value)> Kinds() =>
        RecordShape.Of(typeof(NetworkSpec)).Fields.First(f => f.ItemType == typeof(NetworkWord)).Words.Select(w => (w.Word, (NetworkWord)w.Value));

    private static Finding? Unknown(string option, string? name, List<string> names) => name is not null && names.Contains(name)
        ? null
        : new Finding("export-unknown", Severity.Error, name is null ? "Name the band or the group whose network is wanted." : $"There is no “{name}”.", Written.Place(option), name,
            names.Count == 0 ? "the design has none" : string.Join(", ", names), name is not null && NearMiss.Of(name, names) is { } near ? $"Did you mean “{near}”?" : $"Add {option} with one of these.");

    private static int Refuse(IEnumerable<Finding> findings)
    {
        FindingsView.Write(Shared.Messages(), findings);
        return ExitCode.WrongInput;
    }
}
