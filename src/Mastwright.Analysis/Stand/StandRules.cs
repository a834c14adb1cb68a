using System.Globalization;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Structure.Ground;
using Mastwright.Structure.Members;

namespace Mastwright.Analysis.Stand;

/// <summary>The rules and factors that a design's limits choose, and lengths in its reader's units.</summary>
internal static class StandRules
{
    private const double LiftLoadFactor = 1.5;

    /// <summary>
    /// The member rules: those the file names, or those that go with the wind method. Eurocodes with EN wind; resistance factors with
    /// the strength-level wind of ASCE 7; allowable strength with a stated pressure. Stainless steel has only the Eurocode rules.
    /// </summary>
    public static IMemberRules Members(Station station, MetalFamily family)
    {
        var rules = MemberRules.All.Where(r => r.Family == family).ToList();
        var format = (station.Limits.Members, station.Site.Wind.Method) switch
        {
            (MemberFormat.Eurocode, _) or (null, WindMethod.En1991) => "EN 199",
            (MemberFormat.AllowableStrength, _) or (null, WindMethod.StatedPressure) => "ASD",
            _ => "LRFD",
        };
        var chosen = rules.FirstOrDefault(r => r.Name.Contains(format, StringComparison.Ordinal)) ?? rules[0];
        return station.Limits.MemberFactors is { } f ? chosen.With(new ResistanceFactors(f.Yielding, f.Rupture, f.Compression, f.Bending)) : chosen;
    }

    /// <summary>
    /// Member rules for the weight of a lift: allowable strength, since the dynamic factor is no load factor. A metal without such rules
    /// (stainless steel) takes its own with every strength divided by 1.5, which stands for the load factor (1.5 is the factor of EN 1990
    /// on variable actions, from memory).
    /// </summary>
    public static IMemberRules Lifting(Station station, MetalFamily family)
    {
        var rules = MemberRules.All.Where(r => r.Family == family).ToList();
        if (rules.FirstOrDefault(r => r.Name.Contains("ASD", StringComparison.Ordinal)) is { } allowable)
        {
            return allowable;
        }

        var f = rules[0].Factors;
        return rules[0].With(new ResistanceFactors(f.Yielding / LiftLoadFactor, f.Rupture / LiftLoadFactor, f.Compression / LiftLoadFactor, f.Bending / LiftLoadFactor));
    }

    /// <summary>Factors of safety of soil, concrete and base.</summary>
    public static GroundFactors Ground(Station station)
    {
        var g = station.Limits.GroundFactors ?? new GroundSafety();
        return new GroundFactors
        {
            Bearing = g.Bearing,
            Uplift = g.Uplift,
            DeadWeight = g.DeadWeight,
            Lateral = g.Lateral,
            Sliding = g.Sliding,
            Overturning = g.Overturning,
            ScrewTorque = g.ScrewTorque,
            Bond = g.Bond,
            Steel = g.Steel,
            ConcreteBearing = g.Concrete,
            Ceramic = station.Limits.InsulatorFactor,
        };
    }

    /// <summary>The factor on strand with what wind it is asked of.</summary>
    public static Trail GuyFactor(Station station) => Trail.Given("factor on breaking strength", "γ", station.Limits.GuyFactor, QuantityKind.Ratio, Source.DesignFile, station.Site.Wind.Method switch
    {
        WindMethod.Asce7_16 or WindMethod.Asce7_22 =>
            "changeable (limits: guy-factor). ASCE 7 wind is at strength level, so ANSI/TIA-222 would ask 1/0.6 = 1.67 (from memory); 2 is the old rule for service winds, kept here as the stricter of the two",
        WindMethod.En1991 =>
            "changeable (limits: guy-factor). The wind carries the factor 1.5 already; EN 1993-1-11 would ask 1.5·γR = 1.65 of it (from memory)",
        _ => "changeable (limits: guy-factor). Two on breaking strength at service load; from memory: ANSI/TIA-222-F",
    });

    /// <summary>
    /// A check that screens: it says where something may happen (vibration, a jump off the seat when a guy is lost), not that strength
    /// is used up. Beyond it stands a caution and never a failure, and the number says so.
    /// </summary>
    public static Check Screen(Check check) => check with
    {
        Title = "Screen: " + char.ToLowerInvariant(check.Title[0]) + check.Title[1..],
        Demand = check.Demand.Remark((check.Demand.Note is { } note ? note + "; " : "") + "a screen, not a limit of strength: beyond 100 % expect it and read the cure; it is a caution and never a failure"),
        Verdict = check.Verdict == Verdict.Fail ? Verdict.Caution : check.Verdict,
    };

    /// <summary>A length in the reader's units, for words of a governing case.</summary>
    public static string Length(Station station, double lengthM, int digits = 3) => QuantityFormat.Show(lengthM, QuantityKind.Length, station.UnitSystem, digits);

    /// <summary>A stretch of the mast in the reader's units, heights above ground.</summary>
    public static string Stretch(Station station, Mast mast, double bottomM, double topM) =>
        $"{Length(station, bottomM + mast.Base.HeightM)} to {Length(station, topM + mast.Base.HeightM)}".ToString(CultureInfo.InvariantCulture);
}
