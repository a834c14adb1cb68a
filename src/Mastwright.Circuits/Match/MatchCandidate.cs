using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Lines;
using Mastwright.Circuits.Quantities;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Match;

/// <summary>One way to match the load, solved with real parts at the stated power.</summary>
public sealed class MatchCandidate
{
    private MatchBandwidth? _bandwidth;
    private double? _worstSwr;
    private bool? _drains;

    /// <summary>Solves a ladder.</summary>
    /// <exception cref="InvalidOperationException">The network is singular.</exception>
    public MatchCandidate(string topologyId, string title, Ladder ladder, MatchProblem problem)
    {
        (TopologyId, Title, Ladder, Problem) = (topologyId, title, ladder, problem);
        Network = ladder.Build(problem);
        Solution = Network.Solve(problem.FrequencyHz).AtInputPower(problem.PowerW);
        InputImpedanceOhm = Solution.InputImpedanceOhm(Ladder.Transmitter);
        Swr = Mismatch.Swr(InputImpedanceOhm, problem.LineOhm);
    }

    /// <summary>Stable name of the topology, e.g. <c>"l-shunt-at-line"</c>.</summary>
    public string TopologyId { get; }

    /// <summary>The topology in plain words.</summary>
    public string Title { get; }

    /// <summary>The sections with their values.</summary>
    public Ladder Ladder { get; }

    /// <summary>What was matched.</summary>
    public MatchProblem Problem { get; }

    /// <summary>The wired network.</summary>
    public Network Network { get; }

    /// <summary>The network solved at the design frequency with the transmitter giving its stated power.</summary>
    public AcSolution Solution { get; }

    /// <summary>What the line sees, ohms.</summary>
    public Complex InputImpedanceOhm { get; }

    /// <summary>Standing wave ratio on the line at the design frequency, losses of the parts included.</summary>
    public double Swr { get; }

    /// <summary>Heat in the network's parts, watts.</summary>
    public double LossW => Solution.LossW;

    /// <summary>Network loss, dB.</summary>
    public double LossDb => Solution.LossDb;

    /// <summary>Number of parts a builder has to get.</summary>
    public int PartCount => Ladder.Sections.Sum(s => s.PartCount);

    /// <summary>The states of the parts of the network itself, without transmitter, insulator and antenna.</summary>
    public IEnumerable<PartState> NetworkParts =>
        Solution.Parts.Where(p => p.Part.Role == PartRole.Passive && p.Part is not Mutual && p.Name != Ladder.BaseInsulator);

    /// <summary>What each section goes through, the one at the line first.</summary>
    public ImmutableArray<SectionStress> Stresses => SectionStress.Of(this);

    /// <summary>The highest voltage across any section of the network.</summary>
    public PeakVolts HighestVoltage => Stresses.Select(s => s.Voltage).DefaultIfEmpty().Max();

    /// <summary>The highest current through any part of the network.</summary>
    public RmsAmps HighestCurrent => NetworkParts.Select(p => p.HighestCurrent).DefaultIfEmpty().Max();

    /// <summary>The run of frequencies around the design frequency with a standing wave ratio up to 2.</summary>
    public MatchBandwidth Bandwidth => _bandwidth ??= MatchBandwidth.Of(this);

    /// <summary>The highest standing wave ratio at the band's edges and at the design frequency; the latter alone when no band was stated.</summary>
    public double WorstSwr => _worstSwr ??= Problem.Band is var (low, high) ? Math.Max(Swr, Math.Max(SwrAt(low), SwrAt(high))) : Swr;

    /// <summary>Price of the parts; null when any of them has none.</summary>
    public double? Price => Problem.PriceOf is { } priceOf ? Ladder.Sections.Aggregate((double?)0, (sum, s) => sum + priceOf(s)) : null;

    /// <summary>Whether static charge on the mast finds a way to ground through the network's own metal.</summary>
    public bool DrainsStatic => _drains ??= DcPath.Exists(Network, Ladder.LoadNode);

    /// <summary>Standing wave ratio on the line at another frequency.</summary>
    public double SwrAt(double frequencyHz) =>
        Network.TrySolve(frequencyHz, out var s, out _) ? s.Swr(Ladder.Transmitter, Problem.LineOhm) : double.PositiveInfinity;

    /// <summary>The same topology with other sections, solved anew.</summary>
    public MatchCandidate With(Ladder ladder) => new(TopologyId, Title, ladder, Problem);

    /// <summary>Remarks on this candidate: what is out of range or worth knowing.</summary>
    public ImmutableArray<Finding> Findings => MatchRemarks.On(this);
}

/// <summary>The candidates found, the best first, and what stood in the way of others.</summary>
/// <param name="Candidates">Candidates in rank order; empty when the load cannot be matched.</param>
/// <param name="Findings">Why nothing, or less than hoped, was found.</param>
public sealed record MatchResult(ImmutableArray<MatchCandidate> Candidates, ImmutableArray<Finding> Findings);
