using Mastwright.Model.Trails;

namespace Mastwright.Fields.Shapes;

/// <summary>
/// The radius of the round wire that has the same charge-to-potential ratio as a conductor of another cross-section, long against
/// its width. Radio currents near a thin antenna follow the static charge, so that wire also has the same impedance.
/// </summary>
public static class EquivalentRadius
{
    private const string LongAndThin = "cross-section small against the wavelength (a few per cent) and against the length";

    private static readonly Source CageSource = Source.FromMemory("Schelkunoff and Friis, Antennas: Theory and Practice, cage of parallel wires", "1952");

    private static readonly Source FlatSource = Source.FromMemory("Hallén; King, Theory of Linear Antennas: equivalent radius of non-circular sections", "1956");

    /// <summary>
    /// n equal parallel wires evenly spaced on a circle and joined so that they share the current: a_eq = (n·a·r^(n−1))^(1/n).
    /// </summary>
    /// <param name="wireCount">Number of wires, at least 1.</param>
    /// <param name="wireRadiusM">Radius of one wire, metres.</param>
    /// <param name="circleRadiusM">Radius of the circle through their centres, metres.</param>
    public static Trail Cage(int wireCount, double wireRadiusM, double circleRadiusM)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(wireCount, 1);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(wireRadiusM);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(circleRadiusM);
        var value = wireCount == 1 ? wireRadiusM : Math.Pow(wireCount * wireRadiusM * Math.Pow(circleRadiusM, wireCount - 1), 1.0 / wireCount);

        // Wires that nearly touch shade each other, and the formula's even charge around each wire no longer holds.
        var spacingM = 2 * circleRadiusM * Math.Sin(Math.PI / wireCount);
        var tight = wireCount > 1 && spacingM < 4 * wireRadiusM
            ? "the wires of the cage stand closer than four of their radii; the formula then gives too small a radius by a few per cent"
            : null;
        return Trail.Computed(
                "equivalent radius of the cage", "a_eq", value, QuantityKind.FineLength, "a_eq = (n·a·r^(n−1))^(1/n)", CageSource,
                Trail.Given("number of wires", "n", wireCount, QuantityKind.Count, Source.DesignFile),
                Trail.Given("radius of one wire", "a", wireRadiusM, QuantityKind.FineLength, Source.DesignFile),
                Trail.Given("radius of the circle through the wires", "r", circleRadiusM, QuantityKind.FineLength, Source.DesignFile))
            .Within(LongAndThin, tight);
    }

    /// <summary>
    /// A lattice mast with three or four legs, seen as a cage of its legs; the bracing carries little axial current and is left out,
    /// which makes the radius a little too small.
    /// </summary>
    /// <param name="legCount">3 or 4.</param>
    /// <param name="legRadiusM">Radius of one leg, metres.</param>
    /// <param name="faceWidthM">Distance between the centres of neighbouring legs, metres.</param>
    public static Trail Lattice(int legCount, double legRadiusM, double faceWidthM) =>
        Cage(legCount, legRadiusM, faceWidthM / (2 * Math.Sin(Math.PI / legCount)))
            .Remark("legs only: the bracing is left out, which makes the radius a little too small");

    /// <summary>A thin flat strap: a quarter of its width, exact for no thickness.</summary>
    /// <param name="widthM">Width in metres.</param>
    public static Trail FlatStrap(double widthM)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(widthM);
        return Trail.Computed(
                "equivalent radius of the strap", "a_eq", widthM / 4, QuantityKind.FineLength, "a_eq = w/4", FlatSource,
                Trail.Given("width", "w", widthM, QuantityKind.FineLength, Source.DesignFile))
            .Within(LongAndThin);
    }

    /// <summary>A square tube: 0.5902 of its side.</summary>
    /// <param name="sideM">Outer side in metres.</param>
    public static Trail SquareTube(double sideM)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(sideM);
        return Trail.Computed(
                "equivalent radius of the square tube", "a_eq", 0.5902 * sideM, QuantityKind.FineLength, "a_eq = 0.5902·s", FlatSource,
                Trail.Given("side", "s", sideM, QuantityKind.FineLength, Source.DesignFile))
            .Within(LongAndThin);
    }
}
