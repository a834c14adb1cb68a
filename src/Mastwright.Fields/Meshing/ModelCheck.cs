using System.Globalization;
using Mastwright.Fields.Wires;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;

namespace Mastwright.Fields.Meshing;

/// <summary>Checks of single wires, feeds and loads, before anything is joined.</summary>
internal static class ModelCheck
{
    /// <summary>Above this radius in radians of phase (2πa/λ) the thin-wire idea no longer holds.</summary>
    public const double LargestRadiusPhase = 0.6;

    /// <summary>Above this the answer is usable but carries a warning.</summary>
    public const double CautiousRadiusPhase = 0.25;

    public static List<Finding> Check(WireModel model, double frequencyHz)
    {
        var findings = new List<Finding>();
        if (!(frequencyHz > 0) || double.IsInfinity(frequencyHz))
            findings.Add(Error("frequency", $"The frequency must be positive, not {Text(frequencyHz)} Hz.", Text(frequencyHz), "above 0", "Give the frequency in hertz."));
        if (model.Wires.IsDefaultOrEmpty)
            findings.Add(Error("no-wires", "There are no wires.", null, "at least one", "Add a wire."));
        else
            foreach (var wire in model.Wires)
                CheckWire(wire, model.Ground, frequencyHz, findings);
        foreach (var name in model.Wires.GroupBy(w => w.Name).Where(g => g.Count() > 1).Select(g => g.Key))
            findings.Add(Error("wire-name-twice", $"Two wires are called \"{name}\".", name, "unique names", "Rename one of them."));
        foreach (var feed in model.Feeds)
            CheckPlace(model, "feed", feed.Name, feed.Wire, feed.Position, findings);
        foreach (var load in model.Loads)
            CheckPlace(model, "load", load.Name, load.Wire, load.Position, findings);
        return findings;
    }

    private static void CheckWire(Wire wire, Ground ground, double frequencyHz, List<Finding> findings)
    {
        double[] numbers = [wire.Start.X, wire.Start.Y, wire.Start.Z, wire.End.X, wire.End.Y, wire.End.Z, wire.StartRadiusM, wire.EndRadiusM];
        if (!numbers.All(double.IsFinite))
        {
            findings.Add(Error("wire-not-finite", $"Wire \"{wire.Name}\" has a coordinate or radius that is not a number.", wire.Name, "finite numbers", "Check the wire's ends and radius."));
            return;
        }

        var radiusM = Math.Max(wire.StartRadiusM, wire.EndRadiusM);
        if (!(Math.Min(wire.StartRadiusM, wire.EndRadiusM) > 0))
            findings.Add(Error("wire-radius", $"Wire \"{wire.Name}\" has no radius.", $"{Text(wire.StartRadiusM)} m, {Text(wire.EndRadiusM)} m", "above 0 m", "Give the radius of the conductor."));
        if (!(wire.LengthM > 0))
            findings.Add(Error("wire-zero-length", $"Wire \"{wire.Name}\" has no length.", "0 m", "above 0 m", "Remove it or move one end."));
        else if (wire.LengthM < radiusM)
        {
            findings.Add(Error(
                "wire-shorter-than-radius", $"Wire \"{wire.Name}\" is shorter than its own radius, which a thin-wire model cannot describe.",
                $"{Text(wire.LengthM)} m", $"at least {Text(radiusM)} m", "Merge it with its neighbour or use a thinner equivalent."));
        }

        if (wire.Jacket is { } jacket && !(jacket.ThicknessM > 0 && jacket.RelativePermittivity >= 1 && jacket.LossTangent >= 0))
            findings.Add(Error("wire-jacket", $"The jacket of wire \"{wire.Name}\" is not possible.", $"{Text(jacket.ThicknessM)} m, εr {Text(jacket.RelativePermittivity)}, tan δ {Text(jacket.LossTangent)}", "thickness above 0 m, εr at least 1, tan δ at least 0", "Correct the jacket or leave it out."));

        var phase = Vacuum.WaveNumber(frequencyHz) * radiusM;
        if (phase > LargestRadiusPhase)
        {
            findings.Add(Error(
                "wire-too-fat", $"Wire \"{wire.Name}\" is too fat for a thin-wire model at {Text(frequencyHz / 1e6)} MHz.",
                $"{Text(radiusM)} m", $"at most {Text(LargestRadiusPhase / Vacuum.WaveNumber(frequencyHz))} m", "Model it as a cage of thinner wires, or stay at lower frequencies."));
        }
        else if (phase > CautiousRadiusPhase)
        {
            findings.Add(new(
                "wire-rather-fat", Severity.Warning, $"Wire \"{wire.Name}\" is rather fat at {Text(frequencyHz / 1e6)} MHz: expect a few per cent of error.",
                Value: $"{Text(radiusM)} m", Allowed: $"up to {Text(CautiousRadiusPhase / Vacuum.WaveNumber(frequencyHz))} m for full accuracy", WayOut: "Model it as a cage of thinner wires if this matters."));
        }

        if (ground is Ground.HalfSpace && Math.Max(Math.Abs(wire.Start.Z), Math.Abs(wire.End.Z)) < radiusM)
        {
            findings.Add(Error(
                "wire-in-surface", $"Wire \"{wire.Name}\" lies within its own radius of the soil's surface, half in and half out.",
                $"{Text(wire.Start.Z)} m", $"at least {Text(radiusM)} m above or below", "Put a wire that lies on the ground at its radius above it, a buried one at its depth."));
        }

        if (ground is Ground.PerfectPlane)
        {
            var lowM = Math.Min(wire.Start.Z, wire.End.Z);
            var highM = Math.Max(wire.Start.Z, wire.End.Z);
            if (lowM < -JointGraph.ToleranceM)
                findings.Add(Error("wire-under-ground", $"Wire \"{wire.Name}\" goes below the perfect ground.", $"{Text(lowM)} m", "0 m or above", "Raise it, or choose a ground that can hold buried wires."));
            else if (highM < JointGraph.ToleranceM)
                findings.Add(Error("wire-in-ground-plane", $"Wire \"{wire.Name}\" lies in the perfect ground, which shorts it out.", "0 m", "above 0 m", "Raise it or leave it out."));
            else if (lowM > JointGraph.ToleranceM && lowM < radiusM)
                findings.Add(Error("wire-touches-ground", $"Wire \"{wire.Name}\" comes closer to the ground than its own radius without being joined to it.", $"{Text(lowM)} m", $"0 m exactly, or at least {Text(radiusM)} m", "End it at 0 m to join it, or raise it."));
        }
    }

    private static void CheckPlace(WireModel model, string what, string name, string wire, double position, List<Finding> findings)
    {
        if (!model.Wires.Any(w => w.Name == wire))
            findings.Add(Error($"{what}-wire-unknown", $"The {what} \"{name}\" is on wire \"{wire}\", which does not exist.", wire, "the name of a wire", "Correct the name."));
        if (!(position >= 0 && position <= 1))
            findings.Add(Error($"{what}-position", $"The {what} \"{name}\" is not on its wire.", Text(position), "0 to 1", "Give its place as a fraction of the wire's length."));
    }

    public static Finding Error(string code, string message, string? value, string? allowed, string wayOut) =>
        new(code, Severity.Error, message, Value: value, Allowed: allowed, WayOut: wayOut);

    public static string Text(double number) => number.ToString("G6", CultureInfo.InvariantCulture);
}
