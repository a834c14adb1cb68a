using System.Collections.Immutable;

namespace Mastwright.Circuits.Match.Topologies;

/// <summary>Every topology the designer tries. A new one is a new file and one line here.</summary>
public static class TopologyList
{
    /// <summary>All of them.</summary>
    public static ImmutableArray<ITopology> All { get; } =
    [
        new LShuntAtLine(),
        new LShuntAtLoad(),
        new PiNetwork(),
        new TNetwork(),
        new ShuntCoil(),
        new SeriesCapacitor(),
        new TappedCoil(),
        new Transformer(),
        new QuarterWave(),
        new LineTransformer(),
        new TwelfthWave(),
        new SeriesSection(),
        new SingleStub(),
    ];
}
