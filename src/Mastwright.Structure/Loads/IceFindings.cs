using System.Globalization;
using Mastwright.Model.Trails;

namespace Mastwright.Structure.Loads;

/// <summary>What the ice methods say about figures they cannot use.</summary>
internal static class IceFindings
{
    public static IEnumerable<Finding> Thickness(IceSite site)
    {
        if (!(site.NominalThicknessM is >= 0 and <= 0.2))
        {
            yield return new(
                "ice-thickness", Severity.Error, "The ice thickness is not one that any map shows.", null,
                (site.NominalThicknessM * 1000).ToString("G4", CultureInfo.InvariantCulture) + " mm", "0 to 200 mm (0 to 8 in)", "Look the thickness up in the map of the chosen standard.");
        }

        if (!(site.DensityKgPerM3 is >= 200 and <= 920))
        {
            yield return new(
                "ice-density", Severity.Error, "The density is not that of ice.", null,
                site.DensityKgPerM3.ToString("G4", CultureInfo.InvariantCulture) + " kg/m³", "200 to 920 kg/m³", "Use 900 for glaze.");
        }
    }
}
