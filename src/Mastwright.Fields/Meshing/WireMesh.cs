using System.Collections.Immutable;
using Mastwright.Fields.Wires;
using Mastwright.Model.Trails;
using Mastwright.Numerics;

namespace Mastwright.Fields.Meshing;

/// <summary>
/// A model cut into segments, with its current basis. At every joint of K segment ends there are K − 1 overlapping triangle
/// functions (K where the joint is on the ground), so that Kirchhoff's current law holds by construction.
/// </summary>
public sealed class WireMesh
{
    private WireMesh(WireModel model, ImmutableArray<Segment> segments, ImmutableArray<Vec3> nodes, BasisSet basis, SegmentEnd[] feedEnds, SegmentEnd[] loadEnds, MeshOptions options)
    {
        Model = model;
        Segments = segments;
        Nodes = nodes;
        Basis = basis;
        FeedEnds = feedEnds;
        LoadEnds = loadEnds;
        Options = options;
    }

    /// <summary>The model that was cut.</summary>
    public WireModel Model { get; }

    /// <summary>All segments, grouped by wire in the order of the model, each wire from start to end.</summary>
    public ImmutableArray<Segment> Segments { get; }

    /// <summary>The points where segments meet or end.</summary>
    public ImmutableArray<Vec3> Nodes { get; }

    /// <summary>Number of unknown currents.</summary>
    public int UnknownCount => Basis.Count;

    /// <summary>How it was cut.</summary>
    public MeshOptions Options { get; }

    internal BasisSet Basis { get; }

    internal SegmentEnd[] FeedEnds { get; }

    internal SegmentEnd[] LoadEnds { get; }

    /// <summary>
    /// Checks the model and cuts it for one frequency (for a sweep: the highest). Everything wrong with the model is reported at
    /// once; the mesh is null when any finding is an error.
    /// </summary>
    /// <param name="model">The wires, feeds and loads.</param>
    /// <param name="frequencyHz">Highest frequency to be solved, hertz; must be positive.</param>
    /// <param name="options">How finely to cut.</param>
    public static (WireMesh? Mesh, ImmutableArray<Finding> Findings) Build(WireModel model, double frequencyHz, MeshOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(model);
        options ??= MeshOptions.Default;
        var findings = ModelCheck.Check(model, frequencyHz);
        if (findings.Any(f => f.Severity == Severity.Error))
            return (null, [.. findings]);
        var joints = JointGraph.Build(model, findings);
        if (findings.Any(f => f.Severity == Severity.Error))
            return (null, [.. findings]);
        var cut = Segmenter.Cut(model, joints, frequencyHz, options, findings);
        if (findings.Any(f => f.Severity == Severity.Error))
            return (null, [.. findings]);
        var basis = BasisSet.Build(cut.Segments, cut.Nodes, model.Ground);
        var mesh = new WireMesh(model, cut.Segments, cut.Nodes, basis, cut.FeedEnds, cut.LoadEnds, options);
        for (var i = 0; i < model.Feeds.Length; i++)
            RequireCurrent(model.Feeds[i].Name, model.Feeds[i].Wire, "feed", cut.FeedEnds[i], basis, findings);
        for (var i = 0; i < model.Loads.Length; i++)
            RequireCurrent(model.Loads[i].Name, model.Loads[i].Wire, "load", cut.LoadEnds[i], basis, findings);
        return (findings.Any(f => f.Severity == Severity.Error) ? null : mesh, [.. findings]);
    }

    private static void RequireCurrent(string name, string wire, string what, SegmentEnd end, BasisSet basis, List<Finding> findings)
    {
        if (basis.At(end).Length == 0)
        {
            findings.Add(new(
                $"{what}-at-free-end", Severity.Error, $"The {what} \"{name}\" sits at an end of wire \"{wire}\" that is joined to nothing, where no current can flow.",
                Value: wire, WayOut: $"Move the {what} along the wire, or join that end to another wire or to the ground."));
        }
    }
}
