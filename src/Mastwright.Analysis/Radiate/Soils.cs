using Mastwright.Catalog;
using Mastwright.Fields.Earth;
using Mastwright.Model.Design;

namespace Mastwright.Analysis.Radiate;

/// <summary>The soil of a site as a conductor: its class, with measured values where the design gives them.</summary>
internal static class Soils
{
    public static Soil Of(Model.Design.Site site)
    {
        var row = Catalogue.Default.ElectricalSoils[site.Soil];
        return new Soil(row.Name, site.RelativePermittivity ?? row.RelativePermittivity, site.ConductivitySPerM ?? row.ConductivitySPerM, ModelOf(site.SoilFrequency));
    }

    private static SoilDispersion? ModelOf(SoilFrequency word) => word switch
    {
        SoilFrequency.LongmireSmith => SoilDispersion.LongmireSmith,
        SoilFrequency.Messier => SoilDispersion.Messier,
        SoilFrequency.AlipioVisacro => SoilDispersion.AlipioVisacro,
        _ => null,
    };
}
