using System.Collections.Immutable;
using Mastwright.Model.Trails;

namespace Mastwright.Structure.Loads;

/// <summary>A published way to the thickness of ice on masts and guys and to the wind that blows with it.</summary>
public interface IIceMethod
{
    /// <summary>Name with edition, e.g. <c>"ASCE 7-22 ice"</c>.</summary>
    string Name { get; }

    /// <summary>What is wrong with a site for this method; empty when all is well.</summary>
    ImmutableArray<Finding> Examine(IceSite site);

    /// <summary>The ice on every member at a height above ground.</summary>
    IceLayer At(IceSite site, double heightM);

    /// <summary>The wind that blows while the ice is on.</summary>
    WindWithIce Reduce(IceSite site, WindSite wind);
}

/// <summary>The wind that goes with ice.</summary>
/// <param name="Site">The wind site to use in the place of the bare one.</param>
/// <param name="PressureFactor">Factor on its pressure.</param>
public sealed record WindWithIce(WindSite Site, Trail PressureFactor);

/// <summary>Clear ice around a member, the same thickness all round.</summary>
/// <param name="Thickness">Radial thickness.</param>
/// <param name="Density">Density.</param>
public sealed record IceLayer(Trail Thickness, Trail Density)
{
    private const double GravityMps2 = 9.80665;

    /// <summary>Outside diameter of the iced member.</summary>
    public Trail IcedDiameter(Trail bareDiameter) => Trail.Computed(
        "iced diameter", "Di", bareDiameter.Value + (2 * Thickness.Value), QuantityKind.FineLength, "Di = D + 2·t", Source.Derived("docs/theory/ice.md"), bareDiameter, Thickness);

    /// <summary>Weight of the ice per length of a round member.</summary>
    public Trail WeightOn(Trail bareDiameter) => Trail.Computed(
        "weight of ice per length", "wi", WeightNPerM(bareDiameter.Value), QuantityKind.LinearForce,
        "wi = ρ·g·π·t·(D + t)", Source.FromMemory("ASCE 7, eq. 10.4-1; ISO 12494, section 7"), Density, Thickness, bareDiameter);

    /// <summary>The same weight as a bare number, N/m, for sums over many members.</summary>
    public double WeightNPerM(double bareDiameterM) =>
        Density.Value * GravityMps2 * Math.PI * Thickness.Value * (bareDiameterM + Thickness.Value);
}
