using System.Globalization;
using Mastwright.Model.Trails;
using Mastwright.Structure.Mast;

namespace Mastwright.Structure.Solver;

/// <summary>What a solution tells the user besides numbers.</summary>
internal static class Remarks
{
    private const double FarOverRad = 0.2;

    public static IReadOnlyList<Finding> Of(GuyedMast mast, LoadCase loadCase, PathEnd end, bool twistIsLoose, IReadOnlyList<GuyResult> guys, FootResult foot, double largestTiltRad)
    {
        var list = new List<Finding>();
        var name = loadCase.Name;
        if (twistIsLoose)
        {
            list.Add(new("twist-unrestrained", Severity.Warning, "Nothing stops the mast from turning about its axis: the foot is a ball and every guy attaches on the axis. It was solved as if the foot held the twist.", WayOut: "Attach the guys at a radius, or use a foot that holds the twist."));
        }

        switch (end.Outcome)
        {
            case Outcome.Mechanism:
                list.Add(new("mechanism", Severity.Error, $"Case '{name}': nothing holds the mast upright, even without its weight.", WayOut: "Check that every direction has a guy that is not slack."));
                return list;
            case Outcome.Unstable when end.OwnShare < 1:
                list.Add(new("own-weight-unstable", Severity.Error, $"Case '{name}': the mast gives way at {Text(100 * end.OwnShare)} % of its own weight in still air.", WayOut: "Use a stiffer mast, more guy levels or more initial tension."));
                return list;
            case Outcome.Unstable:
                list.Add(new("unstable", Severity.Error, $"Case '{name}': the mast gives way at {Text(100 * end.CaseShare)} % of the case.", WayOut: "Use a stiffer mast, more guy levels, larger strand or more initial tension."));
                return list;
        }

        foreach (var g in guys.Where(g => g.IsSlack))
        {
            list.Add(new("guy-slack", Severity.Warning, $"Case '{name}': guy '{g.Name}' hangs slack and holds nothing.", null, $"{Text(g.LargestTensionN)} N", "tight in every case", "Raise the initial tension; a slack guy snatches when the wind turns."));
        }

        if (largestTiltRad > FarOverRad)
        {
            list.Add(new("bends-far-over", Severity.Warning, $"Case '{name}': the mast bends {Text(largestTiltRad * 180 / Math.PI)}° out of plumb. It is still an elastic equilibrium, but a mast that needs one like this has failed in practice.", null, $"{Text(largestTiltRad * 180 / Math.PI)}°", $"below {Text(FarOverRad * 180 / Math.PI)}°", "Use a stiffer mast, more guy levels or more initial tension."));
        }

        if (foot.ReactionN.Z < 0)
        {
            list.Add(new("foot-lifts", Severity.Error, $"Case '{name}': the mast pulls upwards on its foot and would leave an insulator that only takes pressure.", null, $"{Text(foot.ReactionN.Z)} N", "pressure", "Hold the foot down, or attach the guys less steeply."));
        }

        return list;
    }

    private static string Text(double value) => value.ToString("F0", CultureInfo.InvariantCulture);
}
