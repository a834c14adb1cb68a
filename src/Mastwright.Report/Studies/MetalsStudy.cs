using Mastwright.Analysis.Survive;
using Mastwright.Model.Trails;
using Mastwright.Protection.Metals;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Studies;

/// <summary>Metals that touch, ropes in the sun, and how long zinc lasts.</summary>
public static class MetalsStudy
{
    private const string Caution =
        "Corrosion hides: under clamps, in concrete, below ground. A pair that passes by the table still has to be opened and looked at. Never rely on a corroded guy, anchor or fitting; local codes, the makers' data and a licensed engineer come first.";

    /// <summary>The study.</summary>
    public static Study Study { get; } = new("metals", "Metals that touch, each pair with its cure; ropes in the sun; how long zinc lasts", Make);

    private static Document Make(StudyInput input)
    {
        var station = input.Station;
        var document = new DocumentBuilder("Metals in contact", station.Name, station.UnitSystem).Caution(Caution);
        document.Text("Pairs known from the design come first, then those the file lists. The limit between anodic indices goes with the place: 0.15 V outdoors and in soil, 0.25 V in a closed box or shed, 0.50 V in a dry, heated room. A barrier turns a failing pair into one to be inspected; a pair the file says nothing about is shown as a caution.");
        document.Table("Pairs", ["Where", "First", "#Index", "Second", "#Index", "Joint", "Place", "#Apart", "#Allowed", "Between", "Said in the file"], MetalsRun.Contacts(station).Select(k => new Cell[]
        {
            k.Contact.Where, k.Contact.First.Name, document.Show(k.Contact.First.AnodicIndexV, QuantityKind.PeakVoltage, 2), k.Contact.Second.Name,
            document.Show(k.Contact.Second.AnodicIndexV, QuantityKind.PeakVoltage, 2), Words(k.Contact.Joint.ToString()), Place(k.Contact.Environment),
            document.Show(Math.Abs(k.Contact.First.AnodicIndexV - k.Contact.Second.AnodicIndexV), QuantityKind.PeakVoltage, 2), k.Contact.Joint == JointKind.InConcrete ? "–" : document.Show(MetalContacts.AllowedV(k.Contact.Environment), QuantityKind.PeakVoltage, 2), Words(k.Contact.Barrier.ToString()), k.Stated ? "yes" : "no",
        }));
        var checks = MetalsRun.Checks(station);
        document.Checks("Checks", checks);
        foreach (var check in checks.Where(c => c.Verdict == Verdict.Caution && c.Cure.Length > 0))
        {
            document.Add(new Note(NoteKind.Remark, $"{check.Title}: {check.Cure}"));
        }

        document.Table($"How long zinc lasts, {station.Metals.Environment.ToString().ToLowerInvariant()} air", ["Part", "#Coat", "#Years at least", "#Years at most"], MetalsRun.Coats(station).Select(c => new Cell[]
        {
            c.Part, document.Show(c.CoatM, 2), document.Show(c.Least, 2), document.Show(c.Most, 2),
        }));
        document.Text("The rates are those of the first year for the air's class; later years are slower inland, hardly so by the sea. Rust anywhere on strand ends its life.");
        return document.Build();
    }

    private static string Place(ContactEnvironment environment) => environment switch
    {
        ContactEnvironment.Indoor => "under cover",
        ContactEnvironment.Controlled => "heated room",
        ContactEnvironment.Buried => "in soil",
        _ => "outdoors",
    };

    private static string Words(string name) => string.Concat(name.Select((c, i) => i > 0 && char.IsUpper(c) ? " " + char.ToLowerInvariant(c) : char.ToLowerInvariant(c).ToString()));
}
