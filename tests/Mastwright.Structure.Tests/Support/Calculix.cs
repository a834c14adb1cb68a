using System.Diagnostics;
using System.Globalization;
using System.Text;
using Mastwright.Numerics;
using Mastwright.Structure.Mast;
using Mastwright.Structure.Solver;

namespace Mastwright.Structure.Tests.Support;

/// <summary>What CalculiX says about a mast.</summary>
internal sealed record CalculixAnswer(IReadOnlyDictionary<double, Vec3> DisplacementM, Vec3 FootReactionN, IReadOnlyDictionary<string, Vec3> ForceOnAnchorN);

/// <summary>
/// Writes a guyed mast as a deck for CalculiX, a general finite element program, and runs it: mast and guys as beam
/// elements with large displacements, loads as nodal forces, guy lengths by a thermal contraction that gives the
/// same unstressed length. Sections are squares with the same EA and EI.
/// </summary>
internal static class Calculix
{
    public static bool IsThere => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Any(p => File.Exists(Path.Combine(p, "ccx")));

    public static CalculixAnswer Run(GuyedMast mast, LoadCase c, double elementM, int guyElements, IReadOnlyList<double> outputHeights)
    {
        var deck = new Deck(mast, c, elementM, guyElements, outputHeights, 0);
        return deck.Read(Execute(deck));
    }

    /// <summary>Natural frequencies in Hz about the mast in still air, from the lowest.</summary>
    public static IReadOnlyList<double> Frequencies(GuyedMast mast, double elementM, int guyElements, int count)
    {
        var lines = Execute(new(mast, new("still air", mast.InstallationTemperatureK), elementM, guyElements, [mast.HeightM], count));
        return [.. lines.Select(l => l.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            .SkipWhile(f => string.Concat(f) != "EIGENVALUEOUTPUT")
            .Where(f => f.Length == 5 && int.TryParse(f[0], out _))
            .Take(count)
            .Select(f => double.Parse(f[3], CultureInfo.InvariantCulture))];
    }

    private static string[] Execute(Deck deck)
    {
        var folder = Directory.CreateTempSubdirectory("mast-ccx");
        try
        {
            File.WriteAllText(Path.Combine(folder.FullName, "mast.inp"), deck.Text);
            var start = new ProcessStartInfo("ccx", "mast") { WorkingDirectory = folder.FullName, RedirectStandardOutput = true, RedirectStandardError = true };
            start.Environment["OMP_NUM_THREADS"] = "1";
            using var run = Process.Start(start)!;
            var output = run.StandardOutput.ReadToEndAsync();
            run.StandardError.ReadToEnd();
            if (!run.WaitForExit(120_000) || !output.Result.Contains("Job finished", StringComparison.Ordinal))
            {
                throw new InvalidOperationException("CalculiX did not finish: " + output.Result[Math.Max(0, output.Result.Length - 500)..]);
            }

            return File.ReadAllLines(Path.Combine(folder.FullName, "mast.dat"));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private sealed class Deck
    {
        private readonly StringBuilder _text = new();
        private readonly Dictionary<double, int> _output = [];
        private readonly Dictionary<string, int> _anchor = [];
        private readonly Dictionary<int, Vec3> _load = [];
        private readonly Dictionary<int, Vec3> _dead = [];
        private readonly List<(int Id, Vec3 At)> _nodes = [];
        private int _element;

        public Deck(GuyedMast mast, LoadCase c, double elementM, int guyElements, IReadOnlyList<double> outputHeights, int frequencies)
        {
            var warming = c.TemperatureK - mast.InstallationTemperatureK;
            var keys = mast.Segments.SelectMany(s => new[] { s.BottomM, s.TopM })
                .Concat(mast.Guys.Select(g => g.AttachmentHeightM)).Concat(outputHeights).Concat(c.PointLoads.Select(p => p.HeightM)).Concat(mast.Weights.Select(w => w.HeightM))
                .Concat(c.MastLoads.SelectMany(l => l.Points).Select(p => p.HeightM))
                .Distinct().Order().ToArray();
            var heights = new List<double> { 0 };
            for (var k = 1; k < keys.Length; k++)
            {
                var n = (int)Math.Ceiling((keys[k] - keys[k - 1]) / elementM);
                heights.AddRange(Enumerable.Range(1, n).Select(i => keys[k - 1] + ((keys[k] - keys[k - 1]) * i / n)));
            }

            var body = new StringBuilder();
            var id = heights.Select(h => Node(mast.AxisPoint(h))).ToArray();
            int At(double h) => id[heights.FindIndex(x => Math.Abs(x - h) < 1e-6)];
            for (var e = 1; e < heights.Count; e++)
            {
                double a = heights[e - 1], b = heights[e], m = 0.5 * (a + b);
                var s = mast.Segments.First(x => m > x.BottomM && m < x.TopM);
                Beam(body, $"M{e}", [(id[e - 1], id[e])], s.AxialStiffnessN, s.BendingStiffnessNm2, s.WeightNPerM, s.ThermalExpansionPerK * warming, new(1, 0, 0));
                var q = new Vec3(0, 0, -c.DeadLoadFactor * s.WeightNPerM);
                foreach (var l in c.MastLoads)
                {
                    for (var i = 1; i < l.Points.Count; i++)
                    {
                        if (m > l.Points[i - 1].HeightM && m < l.Points[i].HeightM)
                        {
                            var t = (m - l.Points[i - 1].HeightM) / (l.Points[i].HeightM - l.Points[i - 1].HeightM);
                            q += ((1 - t) * l.Points[i - 1].LoadNPerM) + (t * l.Points[i].LoadNPerM);
                        }
                    }
                }

                var weight = new Vec3(0, 0, -s.WeightNPerM);
                Push(id[e - 1], 0.5 * (b - a) * q, 0.5 * (b - a) * weight);
                Push(id[e], 0.5 * (b - a) * q, 0.5 * (b - a) * weight);
            }

            foreach (var p in c.PointLoads)
            {
                Push(At(p.HeightM), p.ForceN, Vec3.Zero);
            }

            foreach (var w in mast.Weights)
            {
                Push(At(w.HeightM), new(0, 0, -c.DeadLoadFactor * w.WeightN), new(0, 0, -w.WeightN));
            }

            for (var g = 0; g < mast.Guys.Count; g++)
            {
                var guy = mast.Guys[g];
                if (c.AbsentGuys.Contains(guy.Name))
                {
                    continue;
                }

                var length = MastSolver.UnstressedLength(mast, guy)!.Value;
                var chord = guy.UndeformedChord(mast.FootM);
                var ids = Enumerable.Range(0, guyElements).Select(i => Node(guy.AnchorM + (i / (double)guyElements * chord))).ToList();
                _anchor[guy.Name] = ids[0];
                if (guy.AttachmentRadiusM > 0)
                {
                    ids.Add(Node(guy.AnchorM + chord));
                    Beam(body, $"A{g}", [(At(guy.AttachmentHeightM), ids[^1])], 2e9, 2e7, 0, 0, Vec3.Up);
                }
                else
                {
                    ids.Add(At(guy.AttachmentHeightM));
                }

                var ea = guy.Cable.AxialStiffnessN;
                var pairs = Enumerable.Range(0, guyElements).Select(i => (ids[i], ids[i + 1])).ToArray();
                var strain = (length * (1 + (guy.Cable.ThermalExpansionPerK * warming)) / chord.Length) - 1;
                Beam(body, $"G{g}", pairs, ea, ea * 2e-6, guy.Cable.WeightNPerM, strain, chord.Cross(Vec3.Up).Unit());
                var q = c.GuyLoads.Where(l => l.GuyName == guy.Name).Aggregate(new Vec3(0, 0, -c.DeadLoadFactor * guy.Cable.WeightNPerM), (sum, l) => sum + l.LoadNPerM);
                foreach (var (a, b) in pairs)
                {
                    var share = 0.5 * length / guyElements;
                    var weight = new Vec3(0, 0, -share * guy.Cable.WeightNPerM);
                    Push(a, share * q, weight);
                    Push(b, share * q, weight);
                }
            }

            _text.AppendLine("*NODE,NSET=NALL");
            foreach (var (n, at) in _nodes)
            {
                Line($"{n},{at.X:G12},{at.Y:G12},{at.Z:G12}");
            }

            _text.Append(body);
            foreach (var h in outputHeights)
            {
                _output[h] = At(h);
            }

            Line($"*INITIAL CONDITIONS,TYPE=TEMPERATURE\nNALL,0.");
            Line($"*NSET,NSET=HELD\n{string.Join(",\n", _anchor.Values)},\n*NSET,NSET=OUT\n{string.Join(",\n", _output.Values.Distinct())},");

            // With every guy on the axis no twist arises, so it may be held anywhere; held at a strongly tilted foot it upsets the program's beam knots.
            var twist = mast.Guys.All(g => g.AttachmentRadiusM == 0) ? At(mast.Guys[0].AttachmentHeightM) : id[0];
            Line($"*NSET,NSET=RF\nHELD,\n1,\n*BOUNDARY\nHELD,1,3\n1,1,3{(mast.Foot == FootFixity.Ball ? "" : $"\n{twist},6,6")}");
            // First the guys are tightened in still air, then the rest of the load comes on. With a guy missing the still mast
            // would lean far over its slack guys, which beam elements follow badly, so then all load comes on at once.
            var first = c.AbsentGuys.Count > 0 ? _load : _dead;
            Line($"*STEP,NLGEOM,INC=100\n*STATIC\n0.2,1.,1e-6,1.\n*TEMPERATURE\nNALL,1.\n*CLOAD");
            Forces(first);
            if (frequencies > 0)
            {
                Line($"*END STEP\n*STEP,PERTURBATION\n*FREQUENCY\n{frequencies}\n*END STEP");
                return;
            }

            Line($"*END STEP\n*STEP,NLGEOM,INC=100\n*STATIC\n0.2,1.,1e-6,1.\n*CLOAD");
            Forces(_load);
            foreach (var p in c.PointLoads.Where(p => p.MomentNm != Vec3.Zero))
            {
                Line($"{At(p.HeightM)},4,{p.MomentNm.X:G12}\n{At(p.HeightM)},5,{p.MomentNm.Y:G12}\n{At(p.HeightM)},6,{p.MomentNm.Z:G12}");
            }

            Line($"*NODE PRINT,NSET=OUT,FREQUENCY=1000\nU\n*NODE PRINT,NSET=RF,FREQUENCY=1000\nRF\n*END STEP");
        }

        public string Text => _text.ToString();

        // The last block of each kind is the end of the step. Printed reactions are internal forces; the load on the node itself is taken out.
        public CalculixAnswer Read(string[] lines)
        {
            Dictionary<int, Vec3> Block(string title)
            {
                var at = Array.FindLastIndex(lines, l => l.TrimStart().StartsWith(title, StringComparison.Ordinal));
                var rows = new Dictionary<int, Vec3>();
                foreach (var line in lines.Skip(at + 1))
                {
                    var f = line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
                    if (f.Length == 4)
                    {
                        rows[int.Parse(f[0], CultureInfo.InvariantCulture)] = new(Value(f[1]), Value(f[2]), Value(f[3]));
                    }
                    else if (rows.Count > 0)
                    {
                        break;
                    }
                }

                return rows;
            }

            var moved = Block("displacements");
            var forces = Block("forces");
            return new(
                _output.ToDictionary(o => o.Key, o => moved[o.Value]),
                forces[1] - _load[1],
                _anchor.ToDictionary(a => a.Key, a => -(forces[a.Value] - _load[a.Value])));
        }

        private static double Value(string s) => double.Parse(s, CultureInfo.InvariantCulture);

        private int Node(Vec3 at)
        {
            _nodes.Add((_nodes.Count + 1, at));
            return _nodes.Count;
        }

        private void Push(int node, Vec3 f, Vec3 dead)
        {
            _load[node] = _load.GetValueOrDefault(node) + f;
            _dead[node] = _dead.GetValueOrDefault(node) + dead;
        }

        private void Forces(Dictionary<int, Vec3> loads)
        {
            foreach (var (n, f) in loads)
            {
                Line($"{n},1,{f.X:G12}\n{n},2,{f.Y:G12}\n{n},3,{f.Z:G12}");
            }
        }

        private void Line(FormattableString s) => _text.AppendLine(s.ToString(CultureInfo.InvariantCulture));

        private void Beam(StringBuilder body, string set, (int A, int B)[] pairs, double ea, double ei, double weight, double strain, Vec3 normal)
        {
            var side = Math.Sqrt(12 * ei / ea);
            body.AppendLine(CultureInfo.InvariantCulture, $"*ELEMENT,TYPE=B31,ELSET={set}");
            foreach (var (a, b) in pairs)
            {
                body.AppendLine(CultureInfo.InvariantCulture, $"{++_element},{a},{b}");
            }

            body.AppendLine(CultureInfo.InvariantCulture, $"*MATERIAL,NAME={set}\n*ELASTIC\n{ea / (side * side):G12},0.0\n*DENSITY\n{weight / ReferenceMasts.G / (side * side):G12}\n*EXPANSION,ZERO=0.\n{strain:G12}");
            body.AppendLine(CultureInfo.InvariantCulture, $"*BEAM SECTION,ELSET={set},MATERIAL={set},SECTION=RECT\n{side:G12},{side:G12}\n{normal.X:F9},{normal.Y:F9},{normal.Z:F9}");
        }
    }
}
