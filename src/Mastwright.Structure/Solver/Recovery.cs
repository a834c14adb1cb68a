using Mastwright.Numerics;

namespace Mastwright.Structure.Solver;

/// <summary>Turns a converged state into what a builder asks for: section forces, foot, guys.</summary>
internal sealed class Recovery(MastMesh mesh, LoadSet loads, Assembly assembly, PathEnd end)
{
    private static readonly double[] GaussPoint = [-0.7745966692414834, 0, 0.7745966692414834];
    private static readonly double[] GaussWeight = [5.0 / 9, 8.0 / 9, 5.0 / 9];

    private readonly MastState _state = end.State;
    private readonly PlacedLoad _load = loads.At(end.OwnShare, end.CaseShare);

    /// <summary>Brings the assembly to the state; call first.</summary>
    public void Settle() => assembly.Evaluate(_state, _load, withTangent: false);

    public IReadOnlyList<NodeResult> Nodes() =>
        [.. Enumerable.Range(0, mesh.NodeCount).Select(i => new NodeResult(mesh.Heights[i], _state.U[i], _state.T[i].RotationVector(), _state.T[i].Along))];

    public FootResult Foot()
    {
        var force = HeldPart(0);
        var moment = HeldPart(3);
        var foot = _state.T[0];
        var tilt = Math.Atan2(Math.Sqrt((foot.Along.X * foot.Along.X) + (foot.Along.Y * foot.Along.Y)), foot.Along.Z);
        return new(force, moment, tilt, foot.RotationVector().Z);
    }

    public IReadOnlyList<GuyResult> Guys()
    {
        var list = new List<GuyResult>();
        for (var g = 0; g < mesh.Guys.Length; g++)
        {
            if (!_load.Present[g])
            {
                continue;
            }

            var c = assembly.Cables[g];
            list.Add(new(mesh.Guys[g].Guy.Name, mesh.Guys[g].UnstressedLengthM, c.StartTensionN, c.EndTensionN, c.StartPullN, c.EndPullN, assembly.ChordOf(_state, g), c.SagM(), c));
        }

        return list;
    }

    public IReadOnlyList<SectionResult> Sections()
    {
        var list = new List<SectionResult>(3 * mesh.Elements.Length);
        for (var e = 0; e < mesh.Elements.Length; e++)
        {
            // Element forces on the nodes hold the load as work on its nodes; taking that out leaves the true forces at the cut.
            var r = assembly.Ends[e];
            var l = _load.Elements[e];
            var force = r.Chord + l.F1;
            var moment = _state.T[e].Along.Cross(l.Q1) - r.First;
            foreach (var share in (ReadOnlySpan<double>)[0, 0.5, 1])
            {
                list.Add(Cut(e, share, force, moment));
            }
        }

        return list;
    }

    // Equilibrium of the stretch from the bottom of the element to the cut, on the deformed curve.
    private SectionResult Cut(int e, double share, Vec3 bottomForce, Vec3 bottomMoment)
    {
        double bottom = mesh.Heights[e], length = mesh.Elements[e].LengthM;
        var cut = bottom + (share * length);
        Vec3 force = bottomForce, loadMoment = Vec3.Zero;
        var breaks = loads.Breaks(bottom, cut);
        for (var i = 1; i < breaks.Count; i++)
        {
            double a = breaks[i - 1], b = breaks[i];
            for (var g = 0; g < 3; g++)
            {
                var z = (0.5 * (a + b)) + (0.5 * (b - a) * GaussPoint[g]);
                var q = 0.5 * (b - a) * GaussWeight[g] * loads.MastLoadAt(e, z, end.OwnShare, end.CaseShare);
                force -= q;
                loadMoment += Curve(e, (z - bottom) / length).Place.Cross(q);
            }
        }

        var (place, along) = Curve(e, share);
        var moment = bottomMoment - place.Cross(force) - loadMoment;
        var axial = force.Dot(along);
        var torsion = moment.Dot(along);
        return new(cut, axial, force - (axial * along), moment - (torsion * along), torsion);
    }

    // Place relative to the bottom node, and direction, on the cubic through both nodes.
    private (Vec3 Place, Vec3 Along) Curve(int e, double x)
    {
        var l = mesh.Elements[e].LengthM;
        var chord = new Vec3(0, 0, l) + _state.U[e + 1] - _state.U[e];
        Vec3 t1 = _state.T[e].Along, t2 = _state.T[e + 1].Along;
        double x2 = x * x, x3 = x2 * x;
        var place = (((3 * x2) - (2 * x3)) * chord) + (l * (x - (2 * x2) + x3) * t1) + (l * (x3 - x2) * t2);
        var along = (6 * (x - x2) / l * chord) + ((1 - (4 * x) + (3 * x2)) * t1) + (((3 * x2) - (2 * x)) * t2);
        return (place, along.Unit());
    }

    private Vec3 HeldPart(int offset)
    {
        Span<double> v = stackalloc double[3];
        foreach (var h in assembly.Held)
        {
            if (h >= offset && h < offset + 3)
            {
                v[h - offset] = assembly.Gradient[h];
            }
        }

        return new(v[0], v[1], v[2]);
    }
}
