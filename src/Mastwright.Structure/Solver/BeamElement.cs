using Mastwright.Numerics;

namespace Mastwright.Structure.Solver;

/// <summary>
/// A beam between two sections that may move and turn without limit while its own strains stay small.
/// <para>
/// The chord between the nodes carries the large motion; what is left are the small angles between the chord e
/// and the section axes t1, t2. Because the bending stiffness is the same in all directions, the energy needs
/// nothing but the chord length l and the dot products c1 = e·t1, c2 = e·t2, c12 = t1·t2 and the twist τ:
/// U = EA L ε²/2 + (k11 + k12)(2 - c1 - c2) - k12 (1 - c12) + GJ τ²/(2L),
/// ε = l/L - 1 - αΔT + [6(1 - c1) + 6(1 - c2) + 2(1 - c12)]/60, the last term being the shortening by the bow
/// inside the element. k11 = (4+φ)EI/(L(1+φ)), k12 = (2-φ)EI/(L(1+φ)), φ = 12EI/(GA L²).
/// Gradient and second derivative follow without approximation, so the tangent is symmetric and consistent.
/// </para>
/// Source of the co-rotational idea: Crisfield, Non-linear Finite Element Analysis of Solids and Structures, vol. 2, 1997,
/// ch. 17; of the stiffness of a shear-flexible beam: Przemieniecki, Theory of Matrix Structural Analysis, 1968, ch. 5.
/// The energy in dot products is derived on the theory page.
/// </summary>
internal readonly struct BeamElement
{
    private readonly double _length;
    private readonly double _ea;
    private readonly double _bend;   // k11 + k12
    private readonly double _couple; // k12
    private readonly double _gj;

    public BeamElement(double lengthM, double axialStiffnessN, double bendingStiffnessNm2, double torsionalStiffnessNm2, double shearStiffnessN, double thermalExpansionPerK)
    {
        _length = lengthM;
        _ea = axialStiffnessN;
        var phi = 12 * bendingStiffnessNm2 / (shearStiffnessN * lengthM * lengthM);
        var unit = bendingStiffnessNm2 / (lengthM * (1 + phi));
        _bend = 6 * unit;
        _couple = (2 - phi) * unit;
        _gj = torsionalStiffnessNm2;
        ThermalExpansionPerK = thermalExpansionPerK;
    }

    public double LengthM => _length;

    public double AxialStiffnessN => _ea;

    public double ThermalExpansionPerK { get; }

    /// <summary>
    /// First derivative of the energy: force along the chord motion (on node 2; node 1 feels the opposite) and
    /// the moments at both nodes, conjugate to a further rotation of each section.
    /// </summary>
    public Response Gradient(in Pose pose, double warmingK)
    {
        var p = new Parts(this, pose, warmingK);
        return new(p.Chord, p.First, p.Second, p.Normal);
    }

    /// <summary>Gradient and the second derivative in blocks: chord-chord, chord-first, chord-second, first-first, first-second, second-second.</summary>
    public Response Tangent(in Pose pose, double warmingK, Span<double> blocks)
    {
        blocks.Clear();
        var p = new Parts(this, pose, warmingK);
        var kdd = new Block3(blocks[..9]);
        var kd1 = new Block3(blocks[9..18]);
        var kd2 = new Block3(blocks[18..27]);
        var k11 = new Block3(blocks[27..36]);
        var k12 = new Block3(blocks[36..45]);
        var k22 = new Block3(blocks[45..54]);
        Vec3 e = p.E, t1 = pose.First.Along, t2 = pose.Second.Along;

        // Stretch: EA L (dε)².
        var stretch = _ea * _length;
        var ed = (e / _length) - (0.1 / p.Chordal * (p.P1 + p.P2));
        var e1 = (-0.1 * p.T1E) - (1.0 / 30 * p.T12);
        var e2 = (-0.1 * p.T2E) + (1.0 / 30 * p.T12);
        kdd.AddOuter(stretch, ed, ed);
        kd1.AddOuter(stretch, ed, e1);
        kd2.AddOuter(stretch, ed, e2);
        k11.AddOuter(stretch, e1, e1);
        k12.AddOuter(stretch, e1, e2);
        k22.AddOuter(stretch, e2, e2);

        // Chord tension N times the second derivative of l.
        var l = p.Chordal;
        kdd.AddIdentity(p.Normal / l);
        kdd.AddOuter(-p.Normal / l, e, e);

        // -A times the second derivatives of c1 and c2.
        AddChordAngle(kdd, kd1, k11, e, t1, p.P1, l, p.C1, -p.A);
        AddChordAngle(kdd, kd2, k22, e, t2, p.P2, l, p.C2, -p.A);

        // -B times the second derivative of c12.
        AddPair(k11, k12, k22, t1, t2, -p.B);

        // Twist.
        var gj = _gj / _length;
        k11.AddOuter(gj, p.Twist, p.Twist);
        k12.AddOuter(-gj, p.Twist, p.Twist);
        k22.AddOuter(gj, p.Twist, p.Twist);
        AddPair(k11, k12, k22, pose.First.North, pose.Second.East, 0.5 * p.Torque);
        AddPair(k11, k12, k22, pose.First.East, pose.Second.North, -0.5 * p.Torque);
        return new(p.Chord, p.First, p.Second, p.Normal);
    }

    /// <summary>
    /// The part of the second derivative that is proportional to the normal force, in the same blocks:
    /// the geometric stiffness, which compression makes negative.
    /// </summary>
    public void Geometric(in Pose pose, double warmingK, Span<double> blocks)
    {
        blocks.Clear();
        var p = new Parts(this, pose, warmingK);
        var kdd = new Block3(blocks[..9]);
        var kd1 = new Block3(blocks[9..18]);
        var kd2 = new Block3(blocks[18..27]);
        var k11 = new Block3(blocks[27..36]);
        var k12 = new Block3(blocks[36..45]);
        var k22 = new Block3(blocks[45..54]);
        var l = p.Chordal;
        kdd.AddIdentity(p.Normal / l);
        kdd.AddOuter(-p.Normal / l, p.E, p.E);
        var bow = -0.1 * p.Normal * _length;
        AddChordAngle(kdd, kd1, k11, p.E, pose.First.Along, p.P1, l, p.C1, bow);
        AddChordAngle(kdd, kd2, k22, p.E, pose.Second.Along, p.P2, l, p.C2, bow);
        AddPair(k11, k12, k22, pose.First.Along, pose.Second.Along, -p.Normal * _length / 30);
    }

    /// <summary>The energy itself, for checks.</summary>
    public double Energy(in Pose pose, double warmingK)
    {
        var p = new Parts(this, pose, warmingK);
        var strain = p.Normal / _ea;
        return (0.5 * _ea * _length * strain * strain) + (_bend * (2 - p.C1 - p.C2)) - (_couple * (1 - p.C12)) + (0.5 * p.Torque * p.Torque * _length / _gj);
    }

    // s times the second derivative of c = e·t, e the direction of the chord of length l, t riding with a section; p = t - c e.
    private static void AddChordAngle(Block3 kdd, Block3 kdw, Block3 kww, Vec3 e, Vec3 t, Vec3 p, double l, double c, double s)
    {
        var s2 = s / (l * l);
        kdd.AddOuter(-s2, e, p);
        kdd.AddOuter(-s2, p, e);
        kdd.AddIdentity(-s2 * c);
        kdd.AddOuter(s2 * c, e, e);

        // -(I - e eᵀ) [t×] / l, and eᵀ[t×] = (e×t)ᵀ.
        kdw.AddCross(-s / l, t);
        kdw.AddOuter(s / l, e, e.Cross(t));
        kww.AddTurnHessian(s, e, t);
    }

    // s times the second derivative of x·y, x riding with the first section and y with the second.
    private static void AddPair(Block3 k11, Block3 k12, Block3 k22, Vec3 x, Vec3 y, double s)
    {
        k11.AddTurnHessian(s, x, y);
        k22.AddTurnHessian(s, x, y);
        k12.AddIdentity(s * x.Dot(y));
        k12.AddOuter(-s, y, x);
    }

    /// <summary>Where the element is: chord at rest, how much it has changed, and the section axes at both ends.</summary>
    public readonly record struct Pose(Vec3 RestChord, Vec3 ChordChange, Triad First, Triad Second);

    /// <summary>Forces and moments of the element on its nodes, and the normal force.</summary>
    public readonly record struct Response(Vec3 Chord, Vec3 First, Vec3 Second, double NormalN);

    private readonly ref struct Parts
    {
        public readonly Vec3 E, P1, P2, T1E, T2E, T12, Twist, Chord, First, Second;
        public readonly double Chordal, C1, C2, C12, Normal, A, B, Torque;

        public Parts(in BeamElement b, in Pose pose, double warmingK)
        {
            var chord = pose.RestChord + pose.ChordChange;
            Chordal = chord.Length;
            E = chord / Chordal;
            Vec3 t1 = pose.First.Along, t2 = pose.Second.Along;
            C1 = E.Dot(t1);
            C2 = E.Dot(t2);
            C12 = t1.Dot(t2);
            P1 = t1 - (C1 * E);
            P2 = t2 - (C2 * E);
            T1E = t1.Cross(E);
            T2E = t2.Cross(E);
            T12 = t1.Cross(t2);

            // l - L from the change of the chord, so that no digits are lost; 1 - cos from half the squared difference for the same reason.
            var growth = ((2 * pose.RestChord.Dot(pose.ChordChange)) + pose.ChordChange.Dot(pose.ChordChange)) / (Chordal + b._length);
            Vec3 d1 = t1 - E, d2 = t2 - E, d12 = t1 - t2;
            var bow = ((3 * (d1.Dot(d1) + d2.Dot(d2))) + d12.Dot(d12)) / 60;
            Normal = b._ea * ((growth / b._length) - (b.ThermalExpansionPerK * warmingK) + bow);
            A = b._bend + (0.1 * Normal * b._length);
            B = -b._couple + (Normal * b._length / 30);
            Vec3 a1 = pose.First.East, b1 = pose.First.North, a2 = pose.Second.East, b2 = pose.Second.North;
            Torque = b._gj / b._length * 0.5 * (a2.Dot(b1) - b2.Dot(a1));
            Twist = 0.5 * (b1.Cross(a2) - a1.Cross(b2));
            Chord = (Normal * E) - (A / Chordal * (P1 + P2));
            First = (-A * T1E) - (B * T12) + (Torque * Twist);
            Second = (-A * T2E) + (B * T12) - (Torque * Twist);
        }
    }
}
