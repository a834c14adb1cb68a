using System.Collections.Immutable;
using Mastwright.Model.Trails;

namespace Mastwright.Structure.Loads;

/// <summary>
/// A published way from a basic wind speed to forces: force per length = pressure · gust factor · drag · width.
/// A new method is one new class and one line in <see cref="WindMethods"/>.
/// </summary>
public interface IWindMethod
{
    /// <summary>Name with edition, e.g. <c>"ASCE 7-22"</c>.</summary>
    string Name { get; }

    /// <summary>The exposures or terrain categories it knows; empty when it reads none.</summary>
    ImmutableArray<string> Exposures { get; }

    /// <summary>What is wrong with a site for this method; empty when all is well.</summary>
    ImmutableArray<Finding> Examine(WindSite site);

    /// <summary>Design velocity pressure at a height above ground, directionality included, Pa.</summary>
    /// <param name="site">The wind; must be free of errors by <see cref="Examine"/>.</param>
    /// <param name="heightM">Height above ground, m.</param>
    /// <param name="body">What it blows against.</param>
    Trail Pressure(WindSite site, double heightM, BodyKind body);

    /// <summary>Gust or structural factor that goes with <see cref="Pressure"/>.</summary>
    Trail GustFactor(WindSite site);

    /// <summary>Drag coefficient of a round tube, referred to its diameter.</summary>
    /// <param name="tube">The tube, iced or bare.</param>
    /// <param name="pressure">Pressure from <see cref="Pressure"/>.</param>
    Trail TubeDrag(TubeShape tube, Trail pressure);

    /// <summary>Drag coefficient of a lattice, referred to the solid area of one face.</summary>
    /// <param name="solidity">Solid area of one face over its gross area.</param>
    /// <param name="lattice">The lattice.</param>
    /// <param name="toFaceNormalRad">Angle between the wind and the normal of the nearest face.</param>
    Trail LatticeDrag(Trail solidity, LatticeShape lattice, double toFaceNormalRad);
}
