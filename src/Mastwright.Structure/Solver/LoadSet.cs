using Mastwright.Numerics;
using Mastwright.Structure.Mast;

namespace Mastwright.Structure.Solver;

/// <summary>
/// The load on one element as work on its nodes: forces on both ends and the vectors Q that work on the
/// section axes, so that the load's potential is -F1·u1 - F2·u2 - Q1·t1 - Q2·t2. This is the exact work of a
/// dead load on the cubic curve through both ends with tangents t1 and t2.
/// </summary>
internal readonly record struct ElementLoad(Vec3 F1, Vec3 F2, Vec3 Q1, Vec3 Q2)
{
    public static ElementLoad operator +(ElementLoad a, ElementLoad b) => new(a.F1 + b.F1, a.F2 + b.F2, a.Q1 + b.Q1, a.Q2 + b.Q2);

    public static ElementLoad operator *(double s, ElementLoad a) => new(s * a.F1, s * a.F2, s * a.Q1, s * a.Q2);
}

/// <summary>One load case brought onto the mesh, split into own weight and everything else so that it can be put on by shares.</summary>
internal sealed class LoadSet
{
    private static readonly double[] GaussPoint = [-0.7745966692414834, 0, 0.7745966692414834];
    private static readonly double[] GaussWeight = [5.0 / 9, 8.0 / 9, 5.0 / 9];

    private readonly MastMesh _mesh;
    private readonly ElementLoad[] _weight;
    private readonly ElementLoad[] _case;
    private readonly Vec3[] _lump;
    private readonly Vec3[] _force;
    private readonly Vec3[] _moment;
    private readonly Vec3[] _guy;
    private readonly double[] _guyWeight;

    public LoadSet(MastMesh mesh, LoadCase loadCase)
    {
        _mesh = mesh;
        Case = loadCase;
        var elements = mesh.Elements.Length;
        _weight = new ElementLoad[elements];
        _case = new ElementLoad[elements];
        _lump = new Vec3[mesh.NodeCount];
        _force = new Vec3[mesh.NodeCount];
        _moment = new Vec3[mesh.NodeCount];
        _guy = new Vec3[mesh.Guys.Length];
        for (var e = 0; e < elements; e++)
        {
            var l = mesh.Elements[e].LengthM;
            var q = new Vec3(0, 0, -mesh.Segments[e].WeightNPerM);
            _weight[e] = new(0.5 * l * q, 0.5 * l * q, l * l / 12 * q, -l * l / 12 * q);
            foreach (var load in loadCase.MastLoads)
            {
                _case[e] += Consistent(load, mesh.Heights[e], mesh.Heights[e + 1]);
            }
        }

        foreach (var w in mesh.Mast.Weights)
        {
            _lump[mesh.NearestNode(w.HeightM)] += new Vec3(0, 0, -w.WeightN);
        }

        foreach (var p in loadCase.PointLoads)
        {
            var node = mesh.NearestNode(p.HeightM);
            _force[node] += p.ForceN;
            _moment[node] += p.MomentNm;
        }

        for (var g = 0; g < _guy.Length; g++)
        {
            foreach (var load in loadCase.GuyLoads)
            {
                if (load.GuyName == mesh.Guys[g].Guy.Name)
                {
                    _guy[g] += load.LoadNPerM;
                }
            }
        }

        _guyWeight = [.. mesh.Guys.Select(g => GuyLine.Weight(g.Guy, g.UnstressedLengthM))];
        Present = [.. mesh.Guys.Select(g => !loadCase.AbsentGuys.Contains(g.Guy.Name))];
    }

    public LoadCase Case { get; }

    /// <summary>Whether each guy is there.</summary>
    public bool[] Present { get; }

    /// <summary>The loads at a share of own weight and a share of the case.</summary>
    public PlacedLoad At(double ownShare, double caseShare)
    {
        var gravity = 1 + (caseShare * (Case.DeadLoadFactor - 1));
        var dead = ownShare * gravity;
        var elements = new ElementLoad[_weight.Length];
        var force = new Vec3[_lump.Length];
        var lever = new Vec3[_lump.Length];
        var moment = new Vec3[_lump.Length];
        var total = 0.0;
        for (var i = 0; i < force.Length; i++)
        {
            var f = (dead * _lump[i]) + (caseShare * _force[i]);
            force[i] = f;
            moment[i] = caseShare * _moment[i];
            total += f.Length + (moment[i].Length / Math.Max(_mesh.HeightM, 1e-9));
        }

        for (var e = 0; e < elements.Length; e++)
        {
            var l = (dead * _weight[e]) + (caseShare * _case[e]);
            elements[e] = l;
            force[e] += l.F1;
            force[e + 1] += l.F2;
            lever[e] += l.Q1;
            lever[e + 1] += l.Q2;
            total += (l.F1 + l.F2).Length;
        }

        var guys = new Vec3[_guy.Length];
        for (var g = 0; g < guys.Length; g++)
        {
            guys[g] = caseShare * _guy[g];
            var length = _mesh.Guys[g].UnstressedLengthM;
            total += Present[g] ? ((length * guys[g]) + new Vec3(0, 0, -gravity * _guyWeight[g])).Length : 0;
        }

        return new(elements, force, lever, moment, gravity, guys, Present, caseShare * (Case.TemperatureK - _mesh.Mast.InstallationTemperatureK), total);
    }

    /// <summary>The case's load on an element, own weight left out.</summary>
    public ElementLoad CaseLoad(int element) => _case[element];

    /// <summary>The case's load on a guy, own weight left out.</summary>
    public Vec3 GuyLoad(int guy) => _guy[guy];

    /// <summary>Load per metre of the mast at a height in a stretch, seen from its inside.</summary>
    public Vec3 MastLoadAt(int element, double height, double ownShare, double caseShare)
    {
        var gravity = 1 + (caseShare * (Case.DeadLoadFactor - 1));
        var q = new Vec3(0, 0, -ownShare * gravity * _mesh.Segments[element].WeightNPerM);
        foreach (var load in Case.MastLoads)
        {
            q += caseShare * ValueInside(load, height);
        }

        return q;
    }

    /// <summary>Heights inside a stretch where some load bends or jumps, with both ends.</summary>
    public List<double> Breaks(double bottom, double top)
    {
        var breaks = new List<double> { bottom };
        breaks.AddRange(Case.MastLoads.SelectMany(l => l.Points).Select(p => p.HeightM).Where(h => h > bottom && h < top).Distinct().Order());
        breaks.Add(top);
        return breaks;
    }

    private static ElementLoad Consistent(LineLoad load, double bottom, double top)
    {
        var sum = default(ElementLoad);
        var l = top - bottom;
        for (var i = 1; i < load.Points.Count; i++)
        {
            var a = Math.Max(bottom, load.Points[i - 1].HeightM);
            var b = Math.Min(top, load.Points[i].HeightM);
            if (b <= a)
            {
                continue;
            }

            for (var g = 0; g < 3; g++)
            {
                var z = (0.5 * (a + b)) + (0.5 * (b - a) * GaussPoint[g]);
                var q = 0.5 * (b - a) * GaussWeight[g] * Between(load.Points[i - 1], load.Points[i], z);
                var x = (z - bottom) / l;
                double x2 = x * x, x3 = x2 * x;
                sum += new ElementLoad((1 - (3 * x2) + (2 * x3)) * q, ((3 * x2) - (2 * x3)) * q, l * (x - (2 * x2) + x3) * q, l * (x3 - x2) * q);
            }
        }

        return sum;
    }

    private static Vec3 ValueInside(LineLoad load, double height)
    {
        for (var i = 1; i < load.Points.Count; i++)
        {
            if (height >= load.Points[i - 1].HeightM && height <= load.Points[i].HeightM && load.Points[i].HeightM > load.Points[i - 1].HeightM)
            {
                return Between(load.Points[i - 1], load.Points[i], height);
            }
        }

        return Vec3.Zero;
    }

    private static Vec3 Between(LineLoadPoint a, LineLoadPoint b, double height)
    {
        var t = (height - a.HeightM) / (b.HeightM - a.HeightM);
        return ((1 - t) * a.LoadNPerM) + (t * b.LoadNPerM);
    }
}

/// <summary>Loads at given shares, ready for the assembly.</summary>
/// <param name="Elements">Load of each element.</param>
/// <param name="ForceN">Force on each node, element loads included.</param>
/// <param name="LeverNm">Vector Q of each node that works on the section axis.</param>
/// <param name="MomentNm">Moments fixed in space.</param>
/// <param name="Gravity">Factor on the weight of the guys.</param>
/// <param name="GuyLoadNPerM">Load per unstressed metre of each guy besides its weight.</param>
/// <param name="Present">Whether each guy is there.</param>
/// <param name="WarmingK">Temperature above installation.</param>
/// <param name="TotalN">Sum of the sizes of all loads, the measure for residuals.</param>
internal sealed record PlacedLoad(
    ElementLoad[] Elements,
    Vec3[] ForceN,
    Vec3[] LeverNm,
    Vec3[] MomentNm,
    double Gravity,
    Vec3[] GuyLoadNPerM,
    bool[] Present,
    double WarmingK,
    double TotalN);
