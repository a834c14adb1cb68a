using System.Collections.Immutable;
using System.Numerics;

namespace Mastwright.Circuits.Groups;

/// <summary>One direction: which box port each mast hangs on.</summary>
/// <param name="Name">Name of the direction.</param>
/// <param name="PortOfMast">Port of each mast, both counted from zero.</param>
public sealed record Direction(string Name, ImmutableArray<int> PortOfMast);

/// <summary>A relay of the direction box.</summary>
/// <param name="Mast">The mast it serves.</param>
/// <param name="Port">The box port it connects when its contact is made.</param>
/// <param name="MadeIn">The directions in which it is made.</param>
public sealed record DirectionRelay(int Mast, int Port, ImmutableArray<string> MadeIn);

/// <summary>How a group is steered by hanging its masts on the ports of one phasing box in turn.</summary>
/// <param name="Directions">The directions.</param>
/// <param name="Relays">One contact for each mast and port that is ever used.</param>
/// <param name="DropOff">The direction without any relay drawn: the contacts made in it are the normally closed ones.</param>
public sealed record DirectionTable(ImmutableArray<Direction> Directions, ImmutableArray<DirectionRelay> Relays, string DropOff)
{
    /// <summary>Makes the table.</summary>
    /// <param name="portCurrents">The current each port gives.</param>
    /// <param name="wanted">Each direction's wanted currents, one a mast.</param>
    /// <returns>The table, or null with the name of the first direction whose currents are no rearrangement of the ports'.</returns>
    public static (DirectionTable? Table, string? Impossible) Of(ImmutableArray<Complex> portCurrents, IEnumerable<(string Name, ImmutableArray<Complex> Currents)> wanted)
    {
        var directions = ImmutableArray.CreateBuilder<Direction>();
        foreach (var (name, currents) in wanted)
        {
            if (Turned(portCurrents, currents) is not { } ports)
                return (null, name);
            directions.Add(new(name, ports));
        }

        if (directions.Count == 0)
            return (null, "");
        var relays = from mast in Enumerable.Range(0, portCurrents.Length)
                     from port in directions.Select(d => d.PortOfMast[mast]).Distinct().Order()
                     select new DirectionRelay(mast, port, [.. directions.Where(d => d.PortOfMast[mast] == port).Select(d => d.Name)]);
        return (new(directions.ToImmutable(), [.. relays], directions[0].Name), null);
    }

    // Only ratios matter: a direction may be given with another mast as the reference of the phase.
    private static ImmutableArray<int>? Turned(ImmutableArray<Complex> ports, ImmutableArray<Complex> currents)
    {
        var first = currents.FirstOrDefault(i => i != Complex.Zero);
        return ports.Where(p => p != Complex.Zero && first != Complex.Zero).Select(p => p / first).Prepend(Complex.One)
            .Select(turn => Assign(ports, [.. currents.Select(i => i * turn)])).FirstOrDefault(a => a is not null);
    }

    // Ports of equal current serve in the order of the masts.
    private static ImmutableArray<int>? Assign(ImmutableArray<Complex> ports, ImmutableArray<Complex> currents)
    {
        if (ports.Length != currents.Length)
            return null;
        var free = Enumerable.Range(0, ports.Length).ToList();
        var scale = ports.Max(p => p.Magnitude);
        var chosen = ImmutableArray.CreateBuilder<int>();
        foreach (var i in currents)
        {
            var port = free.FindIndex(p => (ports[p] - i).Magnitude < 1e-6 * scale);
            if (port < 0)
                return null;
            chosen.Add(free[port]);
            free.RemoveAt(port);
        }

        return chosen.ToImmutable();
    }
}
