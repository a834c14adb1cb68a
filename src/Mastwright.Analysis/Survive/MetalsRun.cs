using System.Collections.Immutable;
using Mastwright.Catalog;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Protection.Metals;

namespace Mastwright.Analysis.Survive;

/// <summary>A pair of metals with what the file says about it.</summary>
/// <param name="Contact">The pair.</param>
/// <param name="Stated">Whether the file describes what lies between; otherwise a pair that would suffer is a caution, not a failure.</param>
public sealed record KnownContact(MetalContact Contact, bool Stated);

/// <summary>Years that a zinc coat lasts.</summary>
/// <param name="Part">What carries it.</param>
/// <param name="CoatM">Its thickness.</param>
/// <param name="Least">Years at the fastest rate of the air's class.</param>
/// <param name="Most">Years at the slowest.</param>
public sealed record CoatLife(string Part, Trail CoatM, Trail Least, Trail Most);

/// <summary>Metals in contact, known from the design or described in it.</summary>
public static class MetalsRun
{
    private const double StrandCoatM = 36e-6; // class A of ASTM A475 on 1/4 in strand: 0.85 oz/ft², from memory
    private const double SteelCoatM = 70e-6; // ISO 1461 on sections 3 to 6 mm thick, from memory

    /// <summary>Every pair: those of known parts of the design first, then those the file lists.</summary>
    public static ImmutableArray<KnownContact> Contacts(Station station)
    {
        var spec = station.Metals;
        var copper = Metal("copper");
        List<KnownContact> contacts = [];
        foreach (var mast in station.Masts)
        {
            var foot = Skin(mast.Sections[0]);
            contacts.Add(Known($"base lead of {mast.Name}", copper, foot, JointKind.Clamped, spec.LeadJoint));
            foreach (var metal in mast.Guys.Where(g => Catalogue.Default.Strands.Find(g.Strand).Found).Select(g => Skin(mast.SectionAt(g.HeightM))).DistinctBy(m => m.Name))
            {
                contacts.Add(Known($"guy fittings on {mast.Name}", Metal("zinc coat"), metal, JointKind.Clamped, spec.GuyJoint));
            }

            contacts.AddRange(Joints(mast).Select(j => Known(j.Where, j.Lower, j.Upper, JointKind.Clamped, null)));
            contacts.Add(Known($"gap strap on {mast.Name}", Metal(NameOf(station.Lightning.StrapMetal)), foot, JointKind.Clamped, spec.LeadJoint));
            if (spec.RadialClamps is { } clamps)
            {
                contacts.Add(Known($"radial clamps of {mast.Name}", Metal(NameOf(station.Earth.RadialMetal)), Metal(clamps), JointKind.Clamped, spec.RadialJoint));
            }

            if (spec.MastScrews is { } screws)
            {
                contacts.AddRange(mast.Sections.Select(Skin).DistinctBy(m => m.Name).Select(m => Known($"screws in {m.Name} of {mast.Name}", Metal(screws), m, JointKind.Thread, spec.ScrewJoint)));
            }

            if (mast.TopWires is { PartOfGuys: false })
            {
                // Copper wires at the top drip onto all of the mast.
                contacts.AddRange(mast.Sections.Select(Skin).DistinctBy(m => m.Name).Select(m => Known($"top wires above {m.Name} of {mast.Name}", copper, m, JointKind.RunoffAbove, null)));
            }

            contacts.Add(new(Contact($"base plate of {mast.Name}", Metal(spec.BasePlate), Metal(spec.BasePlate), JointKind.InConcrete, spec.BasePlateBarrier), true));
        }

        if (station.Earth.Rods > 0)
        {
            contacts.Add(new(Contact("earth rods and radials", copper, Metal(station.Earth.RodMetal), JointKind.BondedThroughSoil, BetweenMetals.None), true));
        }

        contacts.AddRange(spec.Contacts.Select(c => new KnownContact(
            new MetalContact(c.Where, Metal(c.First), Metal(c.Second), EnvironmentOf(c), KindOf(c.Joint), BarrierOf(c.Barrier), c.AreaRatio), true)));
        return [.. contacts];

        KnownContact Known(string where, ContactMetal first, ContactMetal second, JointKind joint, BetweenMetals? barrier) =>
            new(Contact(where, first, second, joint, barrier ?? BetweenMetals.None), barrier is not null);

        static MetalContact Contact(string where, ContactMetal first, ContactMetal second, JointKind joint, BetweenMetals barrier) =>
            new(where, first, second, joint == JointKind.BondedThroughSoil ? ContactEnvironment.Buried : ContactEnvironment.Harsh, joint, BarrierOf(barrier));
    }

    /// <summary>The checks of every pair and rope.</summary>
    public static ImmutableArray<Check> Checks(Station station)
    {
        var ids = new HashSet<string>();
        return
        [
            .. Contacts(station).SelectMany(k => MetalContacts.For(k.Contact).Select(c => k.Stated || c.Verdict != Verdict.Fail ? c
                    : c with { Verdict = Verdict.Caution, Cure = c.Cure + " The file does not say what lies between; say so under “metals”." }))
                .Concat(MetalContacts.All([], Ropes(station)))
                .Concat(Bonds(station))
                .Where(c => ids.Add(c.Id)),
        ];
    }

    /// <summary>Ropes in the sun.</summary>
    public static ImmutableArray<RopeInSun> Ropes(Station station) =>
    [
        .. station.Masts.SelectMany(m => m.Guys.Select((g, l) => (Mast: m, Guy: g, Level: l + 1)))
            .Where(g => Catalogue.Default.Ropes.Find(g.Guy.Strand).Found)
            .Select(g => new RopeInSun($"{g.Mast.Name}, level {g.Level}", Catalogue.Default.Ropes[g.Guy.Strand].Fibre, station.Metals.RopeJacketed, station.Metals.RopeYears)),
    ];

    /// <summary>Years that zinc lasts on strand and steel in the site's air.</summary>
    public static ImmutableArray<CoatLife> Coats(Station station)
    {
        // First-year corrosion of zinc, µm a year, of the classes C2 (rural), C3 to C4 (industrial), C4 to C5 (by the sea).
        var (slow, fast) = station.Metals.Environment switch
        {
            AirQuality.Marine => (2.1, 8.4),
            AirQuality.Industrial => (0.7, 4.2),
            _ => (0.1, 0.7),
        };
        var source = Source.FromMemory("ISO 9223, Corrosivity of atmospheres, table 2", "2012");
        var coats = new List<(string Part, double CoatM, Source Source)>();
        if (station.Masts.Any(m => m.Guys.Any(g => Catalogue.Default.Strands.Find(g.Strand).Found)))
        {
            coats.Add(("guy strand, class A coat", StrandCoatM, Source.FromMemory("ASTM A475", "2003")));
        }

        if (station.Masts.Any(m => m.Sections.Any(s => Skin(s).Family == MetalFamily.Zinc)))
        {
            coats.Add(("mast steel, dipped after welding", SteelCoatM, Source.FromMemory("ISO 1461", "2009")));
        }

        return
        [
            .. coats.Select(c =>
            {
                var coat = Trail.Given($"zinc coat of {c.Part}", "s", c.CoatM, QuantityKind.FineLength, c.Source);
                return new CoatLife(c.Part, coat, Years(coat, fast), Years(coat, slow));
            }),
        ];

        Trail Years(Trail coat, double perYear) => Trail.Computed("years of the zinc", "t", coat.Value / (perYear * 1e-6), QuantityKind.Count, "t = s/r", source, coat,
            Trail.Given("zinc lost in a year", "r", perYear * 1e-6, QuantityKind.FineLength, source));
    }

    // Joints of the radials carry radio frequency for decades and a strike for a millisecond.
    private static IEnumerable<Check> Bonds(Station station)
    {
        if (station.Earth.RadialBond == RadialBond.Plate)
        {
            yield break;
        }

        var none = station.Earth.RadialBond == RadialBond.None;
        yield return new("survive.earth.bond", Trade.Survive, "Every radial is bonded at the base for a strike",
            Trail.Given("rule asks for", "a", 1, QuantityKind.Count, Source.CommonPractice), Trail.Given("rule kept", "b", none ? 0 : 1, QuantityKind.Count, Source.DesignFile),
            none ? double.PositiveInfinity : 1, none ? Verdict.Fail : Verdict.Caution, "strike",
            none ? "Bolt, braze or solder every radial to one plate or bus at the foot." : "Clamped joints loosen and corrode: open and clean them each year, or braze them.", Protection.Lightning.StrikeCautions.Storm);
    }

    // Where two sections of different metals meet.
    private static IEnumerable<(string Where, ContactMetal Lower, ContactMetal Upper)> Joints(Mast mast)
    {
        for (var s = 1; s < mast.Sections.Length; s++)
        {
            var (lower, upper) = (Skin(mast.Sections[s - 1]), Skin(mast.Sections[s]));
            if (lower.Name != upper.Name)
            {
                yield return ($"sections {s} and {s + 1} of {mast.Name}", lower, upper);
            }
        }
    }

    private static string NameOf(StrapMetal metal) => metal switch
    {
        StrapMetal.Aluminium => "6061-T6",
        StrapMetal.Steel => "zinc coat",
        StrapMetal.Stainless => "stainless 304",
        _ => "copper",
    };

    private static ContactEnvironment EnvironmentOf(ContactSpec contact) => contact switch
    {
        { Joint: Joint.InSoil } => ContactEnvironment.Buried,
        { Place: JointPlace.Sheltered } => ContactEnvironment.Indoor,
        { Place: JointPlace.HeatedRoom } => ContactEnvironment.Controlled,
        _ => ContactEnvironment.Harsh,
    };

    // Structural steel is hot-dip galvanised: what touches is zinc.
    private static ContactMetal Skin(Section section)
    {
        var name = section.Tube?.Metal ?? Catalogue.Default.Lattices[section.Lattice!].Metal;
        return Metal(Catalogue.Default.Metals[name].Family == "steel" ? "zinc coat" : name);
    }

    private static ContactMetal Metal(string name)
    {
        var metal = Catalogue.Default.Metals[name];
        return new ContactMetal(metal.Name, ContactMetal.FamilyOf(metal.Family), metal.AnodicIndexV, metal.Source);
    }

    private static JointKind KindOf(Joint joint) => joint switch
    {
        Joint.Thread => JointKind.Thread,
        Joint.Above => JointKind.RunoffAbove,
        Joint.InSoil => JointKind.BondedThroughSoil,
        Joint.InConcrete => JointKind.InConcrete,
        _ => JointKind.Clamped,
    };

    private static JointBarrier BarrierOf(BetweenMetals barrier) => barrier switch
    {
        BetweenMetals.Sealed => JointBarrier.CompoundAndSeal,
        BetweenMetals.TransitionMetal => JointBarrier.TransitionMetal,
        BetweenMetals.Insulated => JointBarrier.Insulation,
        BetweenMetals.AntiSeize => JointBarrier.AntiSeize,
        _ => JointBarrier.None,
    };
}
