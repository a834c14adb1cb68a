namespace Mastwright.Fields.Wires;

/// <summary>
/// A pair of feed terminals: a narrow gap in a wire. At a wire's end the gap sits between that end and whatever it is joined to
/// (the ground, for a base feed), and current counts positive out of the joint into the wire; elsewhere it counts positive from
/// the wire's start towards its end.
/// </summary>
/// <param name="Name">Unique name of the terminals.</param>
/// <param name="Wire">Name of the wire.</param>
/// <param name="Position">Fraction of the wire's length, 0 to 1.</param>
public sealed record Feed(string Name, string Wire, double Position);
