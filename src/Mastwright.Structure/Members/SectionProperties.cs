using Mastwright.Model.Trails;

namespace Mastwright.Structure.Members;

/// <summary>What a beam model needs to know of a section, and what strength checks need.</summary>
/// <param name="Area">Cross-section: of the tube, or of all legs of a lattice.</param>
/// <param name="SecondMoment">Second moment of area about any axis through the middle.</param>
/// <param name="RadiusOfGyration">√(I/A).</param>
/// <param name="ElasticModulus">I over the distance to the outermost fibre (tube) or leg centre (lattice).</param>
/// <param name="PlasticModulus">Plastic section modulus of a tube; null for a lattice.</param>
/// <param name="AxialStiffness">EA, N.</param>
/// <param name="BendingStiffness">EI, N·m².</param>
/// <param name="ShearStiffness">Transverse shear stiffness, N: shear force over shear angle.</param>
/// <param name="TorsionStiffness">GJ, N·m².</param>
/// <param name="MassPerLength">Mass per length.</param>
public sealed record SectionProperties(
    Trail Area,
    Trail SecondMoment,
    Trail RadiusOfGyration,
    Trail ElasticModulus,
    Trail? PlasticModulus,
    Trail AxialStiffness,
    Trail BendingStiffness,
    Trail ShearStiffness,
    Trail TorsionStiffness,
    Trail MassPerLength);
