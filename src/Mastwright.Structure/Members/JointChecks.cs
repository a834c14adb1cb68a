using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Members;

/// <summary>Equal bolts that share a force.</summary>
/// <param name="Count">How many.</param>
/// <param name="DiameterM">Nominal diameter, m.</param>
/// <param name="UltimatePa">Tensile strength: 400 MPa for common 4.6, 800 for 8.8, 830 for ASTM F3125 grade A325, 515 for 304 stainless.</param>
public sealed record BoltGroup(int Count, double DiameterM, double UltimatePa)
{
    internal double AreaM2 => Math.PI / 4 * DiameterM * DiameterM;

    internal Trail CountTrail => Trail.Given("number of bolts", "n", Count, QuantityKind.Count, InputSource.Design);

    internal Trail Diameter => Trail.Given("bolt diameter", "d", DiameterM, QuantityKind.FineLength, InputSource.Design);

    internal Trail Ultimate => Trail.Given("tensile strength of the bolts", "Fub", UltimatePa, QuantityKind.Stress, InputSource.Design);
}

/// <summary>One tube pushed into another and through-bolted.</summary>
/// <param name="Outer">Outer tube.</param>
/// <param name="OuterMetal">Its metal.</param>
/// <param name="Inner">Inner tube.</param>
/// <param name="InnerMetal">Its metal.</param>
/// <param name="OverlapM">Length they overlap, m.</param>
/// <param name="Bolts">Bolts through both.</param>
public sealed record TelescopedJoint(RoundSection Outer, MemberMetal OuterMetal, RoundSection Inner, MemberMetal InnerMetal, double OverlapM, BoltGroup Bolts)
{
    /// <summary>Least overlap over the outside diameter of the inner tube.</summary>
    public double LeastOverlapRatio { get; init; } = 2;

    /// <summary>Whether the inner tube stands on a stop inside, so that the bolts carry no compression.</summary>
    public bool StandsOnStop { get; init; }
}

/// <summary>Joints of mast sections: bolts through telescoped tubes, bolts in the splices of lattice legs.</summary>
public static class JointChecks
{
    private const string Caution = "Climb only on a mast whose joints are bolted and whose nuts are locked; use the maker's joint data where there are any.";

    /// <summary>
    /// A telescoped joint: overlap, bolts in double shear (0.45 Fub on the shank with threads in the shear plane, AISC table J3.2)
    /// and bearing on both walls (2 d t Fu a hole, Aluminum Design Manual section J.3; AISC allows more).
    /// </summary>
    /// <param name="part">Which joint; goes into the names of the checks.</param>
    /// <param name="joint">The joint.</param>
    /// <param name="forces">Axial force there; compression positive.</param>
    /// <param name="factors">Factors of the rules in use; the one on rupture is taken for bolts and bearing.</param>
    /// <param name="governingCase">The case, in words.</param>
    public static IEnumerable<Check> Telescoped(string part, TelescopedJoint joint, MemberForces forces, ResistanceFactors factors, string governingCase)
    {
        var diameter = Trail.Given("outside diameter of the inner tube", "D", joint.Inner.OuterDiameterM, QuantityKind.FineLength, InputSource.Design);
        var ratio = Trail.Given("least overlap in diameters", "k", joint.LeastOverlapRatio, QuantityKind.Ratio, Source.CommonPractice, "changeable");
        yield return Check.AtLeast(
            $"stand.mast.overlap[{part}]", Trade.Stand, "Overlap of telescoped tubes",
            Trail.Given("overlap", "lo", joint.OverlapM, QuantityKind.FineLength, InputSource.Design),
            Trail.Computed("least overlap", "lmin", ratio.Value * diameter.Value, QuantityKind.FineLength, "lmin = k·D", Source.CommonPractice, ratio, diameter), "every case",
            "Push the inner tube further in.", Caution);

        // Compression bears on the stop where there is one; pull always hangs on the bolts.
        var value = forces.AxialN >= 0 && joint.StandsOnStop ? 0 : Math.Abs(forces.AxialN);
        var demand = Trail.Given("axial force on the bolts", "N", value, QuantityKind.Force, FromAnalysis);
        var phi = Factor(factors);
        var b = joint.Bolts;
        yield return Check.AtMost(
            $"stand.mast.joint-bolts[{part}]", Trade.Stand, "Bolts of the joint in shear", demand,
            Trail.Computed(
                "shear strength of the bolts", "Rv", phi.Value * 2 * b.Count * 0.45 * b.UltimatePa * b.AreaM2, QuantityKind.Force, "Rv = φ·2·n·0.45·Fub·π/4·d²",
                Source.FromMemory("ANSI/AISC 360, table J3.2, threads in the shear plane", "2016"), phi, b.CountTrail, b.Ultimate, b.Diameter),
            governingCase, "Use more or thicker bolts, or give the inner tube a stop to stand on.", Caution);
        yield return Bearing(part, "outer", joint.Outer, joint.OuterMetal, b, demand, phi, governingCase);
        yield return Bearing(part, "inner", joint.Inner, joint.InnerMetal, b, demand, phi, governingCase);
    }

    /// <summary>A leg splice whose bolts run along the leg and carry its pull (0.75 Fub, AISC table J3.2).</summary>
    /// <param name="part">Which splice; goes into the check's name.</param>
    /// <param name="bolts">Bolts of one leg.</param>
    /// <param name="legForceN">Force in the leg; compression positive, and then the bolts carry nothing.</param>
    /// <param name="factors">Factors of the rules in use; the one on rupture is taken.</param>
    /// <param name="governingCase">The case, in words.</param>
    public static Check LegSplice(string part, BoltGroup bolts, double legForceN, ResistanceFactors factors, string governingCase)
    {
        var phi = Factor(factors);
        return Check.AtMost(
            $"stand.mast.leg-splice[{part}]", Trade.Stand, "Bolts of the leg splice in tension",
            Trail.Given("pull in the leg", "T", Math.Max(0, -legForceN), QuantityKind.Force, FromAnalysis),
            Trail.Computed(
                "tensile strength of the bolts", "Rt", phi.Value * bolts.Count * 0.75 * bolts.UltimatePa * bolts.AreaM2, QuantityKind.Force, "Rt = φ·n·0.75·Fub·π/4·d²",
                Source.FromMemory("ANSI/AISC 360, table J3.2", "2016"), phi, bolts.CountTrail, bolts.Ultimate, bolts.Diameter)
                .Within("no prying: bolts in line with the leg"),
            governingCase, "Use more, thicker or stronger bolts, or raise the guy tension so that the leg stays pressed.", Caution);
    }

    /// <summary>
    /// A telescoped joint in bending: the inner tube bears on the outer near both ends of the overlap, a couple that each wall
    /// takes over a saddle as long as the inner tube's diameter (bearing 1.33·Fu on the projected area, Aluminum Design Manual section J.7, from memory).
    /// </summary>
    /// <param name="part">Which joint; goes into the check's name.</param>
    /// <param name="joint">The joint.</param>
    /// <param name="momentNm">Bending moment there, N·m.</param>
    /// <param name="factors">Factors of the rules in use; the one on rupture is taken.</param>
    /// <param name="governingCase">The case, in words.</param>
    public static Check Prying(string part, TelescopedJoint joint, double momentNm, ResistanceFactors factors, string governingCase)
    {
        var phi = Factor(factors);
        var d = joint.Inner.OuterDiameterM;
        var saddle = Math.Min(d, joint.OverlapM / 2);
        var moment = Trail.Given("bending moment at the joint", "M", Math.Abs(momentNm), QuantityKind.Moment, FromAnalysis);
        var overlap = Trail.Given("overlap", "lo", joint.OverlapM, QuantityKind.FineLength, InputSource.Design);
        var weaker = joint.OuterMetal.UltimatePa * joint.Outer.WallM <= joint.InnerMetal.UltimatePa * Wall(joint.Inner) ? (joint.OuterMetal, joint.Outer.WallM) : (joint.InnerMetal, Wall(joint.Inner));
        var wall = Trail.Given("wall of the weaker tube", "t", weaker.Item2, QuantityKind.FineLength, InputSource.Design);
        return Check.AtMost(
            $"stand.mast.joint-bending[{part}]", Trade.Stand, "Telescoped joint in bending",
            Trail.Computed("force of each wall on the other", "Fm", Math.Abs(momentNm) / (joint.OverlapM - saddle), QuantityKind.Force, "Fm = M/(lo - saddle), saddle as long as the inner tube is thick, at most lo/2", Source.Literature("statics: a couple over the overlap"), moment, overlap),
            Trail.Computed(
                "bearing strength of the walls", "Rw", phi.Value * 1.33 * weaker.Item1.UltimatePa * 2 * wall.Value * saddle, QuantityKind.Force, "Rw = φ·1.33·Fu·2·t·saddle",
                Source.FromMemory("Aluminum Design Manual part I, section J.7: bearing 1.33·Fu", "2015"), phi, weaker.Item1.Ultimate, wall)
                .Within("tubes fit closely; play lets the joint wobble and pounds the walls"),
            governingCase, "Push the inner tube further in, or take thicker walls at the joint.", Caution);
    }

    private static double Wall(RoundSection tube) => tube.IsSolid ? tube.OuterDiameterM / 2 : tube.WallM;

    private static Check Bearing(string part, string which, RoundSection tube, MemberMetal metal, BoltGroup bolts, Trail demand, Trail phi, string governingCase)
    {
        var wall = tube.IsSolid ? tube.OuterDiameterM / 2 : tube.WallM;
        var thickness = Trail.Given($"wall of the {which} tube", "t", wall, QuantityKind.FineLength, InputSource.Design);
        return Check.AtMost(
            $"stand.mast.joint-bearing[{part}, {which} tube]", Trade.Stand, $"Bolts bearing on the {which} tube", demand,
            Trail.Computed(
                $"bearing strength of the {which} tube", "Rb", phi.Value * 2 * bolts.Count * 2 * bolts.DiameterM * wall * metal.UltimatePa, QuantityKind.Force, "Rb = φ·2·n·2·d·t·Fu",
                Source.FromMemory("Aluminum Design Manual part I, section J.3.6", "2015"), phi, bolts.CountTrail, bolts.Diameter, thickness, metal.Ultimate)
                .Within("holes at least two diameters from the end of the tube"),
            governingCase, "Use more or thicker bolts, or sleeve the tube at the joint.", Caution);
    }

    private static Trail Factor(ResistanceFactors factors) => Trail.Given(
        "factor on rupture, bolts and bearing", "φ", factors.Rupture, QuantityKind.Ratio, Source.FromMemory("AISC 360 section J3, ADM section J.3: 0.75 or 1/2.00, 1/1.95"), "changeable");

    private static Source FromAnalysis { get; } = new("second-order analysis of the mast", SourceKind.Derived);
}
