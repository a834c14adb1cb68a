using Mastwright.Analysis.Results;
using Mastwright.Analysis.Survive;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Protection.People;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Studies;

/// <summary>People near high voltage and strong fields.</summary>
public static class PeopleStudy
{
    /// <summary>The study.</summary>
    public static Study Study { get; } = new("people", "Exposure distances by both rule sets, the fence, burns, the fall circle and power lines", Make);

    private static Document Make(StudyInput input)
    {
        var station = input.Station;
        var document = new DocumentBuilder("People near the mast", station.Name, station.UnitSystem).Caution(RfBurn.Caution).Caution(FarFieldExposure.Caution);
        document.Text("Electric and magnetic field each have their limit and their distance. Limits that average over the body are held against the mean square over 0.1 to 1.7 m of height; limits that average over time count the power times the duty of the band; limits against nerve stimulation hold at every instant and count the whole power. Which rule is law is for your country to say.");
        for (var m = 0; m < station.Masts.Length; m++)
        {
            var mast = station.Masts[m];
            document.Section($"Mast {mast.Name}");
            var report = ExposureRun.Of(station, m, input.Result.Masts[m], input.Progress, input.Cancellation);
            document.Text($"A fence {document.Show(report.FenceM, 3)} from the mast's axis satisfies every limit for the public on every band, along the guys and between them, with an arm's reach beyond all that burns.");
            if (report.BetweenM.Value < 0.95 * report.FenceM.Value)
            {
                document.Text($"Between the guys {document.Show(report.BetweenM, 3)} would do: the rest is the current in the lower ends of the guys. A fence round each anchor, or an insulator more in the lowest piece, saves the difference.");
            }

            if (report.Range is { Length: > 0 } range)
            {
                document.Text($"{char.ToUpperInvariant(range[0])}{range[1..]}.");
            }

            document.Checks("Fence and burns", report.Checks);
            document.Findings(report.Findings);
            Distances(document, report, Population.Public, "the public");
            Distances(document, report, Population.Occupational, "people who know and control the exposure");
            Groups(document, report);
            Voltages(document, input.Result.Masts[m]);
            Guys(document, report);
        }

        document.Add(new Note(NoteKind.Assumption, "(!) By hand the distance is a far-field estimate; inside half a wavelength it is no proof and may be far too short. The contact-current limit is stated for 0.1 to 10 MHz and held above that too."));
        Limits(document, station);
        Site(document, input);
        return document.Caution(WorkCautions.Climbing).Caution(WorkCautions.Lifting).Build();
    }

    private static void Distances(DocumentBuilder document, ExposureReport report, Population population, string whom) =>
        document.Table($"Distance from the mast for {whom}", ["Band", "Rule", "#Averaged over", "#Power that counts", "#Electric, between guys", "#Magnetic, between guys", "#Along a guy", "#By hand, far field"],
            report.Bands.Where(b => b.Population == population).SelectMany(b => b.Between.Select(n => new Cell[]
            {
                b.Band.Name, ExposureLimits.Name(n.Limit.Rule), n.Limit.Averages ? document.Show(n.Limit.AveragingS / 60, QuantityKind.Count) + " min" : "no averaging",
                document.Show(Power(n), 3), Metres(document, n.ElectricM), Metres(document, n.MagneticM), Metres(document, b.Along.Single(a => a.Limit.Rule == n.Limit.Rule).Governing), Far(document, b, n),
            })));

    private static string Metres(DocumentBuilder document, Trail distance) => distance.Value == 0 ? "none" : document.Show(distance, 3);

    private static void Groups(DocumentBuilder document, ExposureReport report)
    {
        if (report.Groups.IsEmpty)
        {
            return;
        }

        document.Table("Distance from this mast while its group transmits, the fields of all masts added, or a neighbour alone", ["What transmits", "For", "Rule", "#Power that counts", "#Electric", "#Magnetic"], report.Groups
            .OrderBy(g => g.Population).SelectMany(g => g.Around.Select(n => new Cell[]
            {
                g.Name, g.Population == Population.Public ? "the public" : "who control it", ExposureLimits.Name(n.Limit.Rule), document.Show(Power(n), 3), Metres(document, n.ElectricM), Metres(document, n.MagneticM),
            })));
        document.Text("“None” means inside the limit from 0.6 m outwards. Places nearer to another mast are counted with that one's fence; along eight bearings, guys and all.");
    }

    private static Trail Power(NearFieldDistance distance) => distance.ElectricM.Inputs.First(i => i.Kind == QuantityKind.Power);

    private static string Far(DocumentBuilder document, BandExposure band, NearFieldDistance near) =>
        band.Far.FirstOrDefault(f => f.Limit.Rule == near.Limit.Rule) is { } far ? document.Show(far.DistanceM, 3) : "–";

    private static void Voltages(DocumentBuilder document, MastResult result) =>
        document.Table("Touching the base: current through a person against the contact limit for the public", ["Band", "#Base voltage, rms", "#Current through a hand", "#Limit, public", "#Limit, occupational"], result.Bands.Select(b =>
        {
            var volts = b.BaseRmsV;
            return new Cell[]
            {
                b.Name, document.Show(volts, 3), new(document.Show(RfBurn.ContactCurrent(volts), 3), Verdict.Caution), document.Show(RfBurn.ContactLimit(Population.Public, b.FrequencyHz), 2),
                document.Show(RfBurn.ContactLimit(Population.Occupational, b.FrequencyHz), 2),
            };
        }));

    private static void Guys(DocumentBuilder document, ExposureReport report)
    {
        if (report.Guys.IsEmpty)
        {
            return;
        }

        document.Table("Guys within reach: current into the anchor on the worst band, which a hand in the anchor's place would carry at most", ["Guy", "Band", "#Current", "#Contact limit"], report.Guys.Select(g => new Cell[]
        {
            g.Guy, g.Band, g.CurrentA.Value > g.LimitA.Value ? new Cell(document.Show(g.CurrentA, 3), Verdict.Caution) : document.Show(g.CurrentA, 3), document.Show(g.LimitA, 2),
        }));
        document.Text("Where the current is over the limit, an anchor in poor earth (a deadman, a rock bar, a post in dry concrete) can leave the lowest piece of the guy hot: put an insulator above reach, bond the anchor to an earth rod, or keep people away.");
    }

    private static void Limits(DocumentBuilder document, Station station)
    {
        document.Section("The limits themselves");
        document.Table("Limits for the public", ["Band", "Rule", "#Electric field", "#Magnetic field", "Source"], station.Bands.SelectMany(b => ExposureLimits.All(Population.Public, b.FrequencyHz).Select(l => new Cell[]
        {
            b.Title, ExposureLimits.Name(l.Rule), document.Show(l.ElectricVPerM, 3), document.Show(l.MagneticAPerM, 3), l.ElectricVPerM.Source.ToString(),
        })));
    }

    private static void Site(DocumentBuilder document, StudyInput input)
    {
        document.Section("Around the masts");
        var site = input.Result.Checks.Where(c => c.Trade == Trade.Site).ToList();
        if (site.Count > 0)
        {
            document.Checks("Fall circle and power lines", site);
        }

        document.Caution(FallCircle.PowerLineCaution).Caution(FallCircle.FallCaution);
    }
}
