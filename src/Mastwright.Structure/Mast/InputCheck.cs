using System.Globalization;
using Mastwright.Model.Trails;
using Mastwright.Numerics;

namespace Mastwright.Structure.Mast;

/// <summary>Looks a mast and a load case over before solving. An empty list means they can be solved.</summary>
public static class InputCheck
{
    /// <summary>Temperatures outside these are taken for a slip of the pen: -90 °C to +90 °C.</summary>
    private const double ColdestK = 183.15, HottestK = 363.15;

    /// <summary>Everything wrong with the mast itself.</summary>
    public static IReadOnlyList<Finding> Of(GuyedMast mast)
    {
        var list = new List<Finding>();
        Segments(mast, list);
        var seen = new HashSet<string>();
        foreach (var g in mast.Guys)
        {
            if (!seen.Add(g.Name))
            {
                list.Add(Error("guy-name-twice", $"Two guys are called '{g.Name}'.", g.Name, "names that differ", "Rename one of them."));
            }

            OneGuy(mast, g, list);
        }

        foreach (var w in mast.Weights)
        {
            Number(list, "weight", $"weight of '{w.Name}'", w.WeightN, 0, 1e9, "N");
            Number(list, "weight-height", $"height of weight '{w.Name}'", w.HeightM, 0, mast.HeightM, "m");
        }

        Number(list, "temperature", "installation temperature", mast.InstallationTemperatureK, ColdestK, HottestK, "K");
        if (!Finite(mast.FootM))
        {
            list.Add(Error("foot-place", "The place of the foot is not a number.", mast.FootM.ToString(), "finite numbers", "Give x, y and z of the foot."));
        }

        return list;
    }

    /// <summary>Everything wrong with a load case on this mast.</summary>
    public static IReadOnlyList<Finding> Of(GuyedMast mast, LoadCase loadCase)
    {
        var list = new List<Finding>();
        Number(list, "temperature", $"temperature of case '{loadCase.Name}'", loadCase.TemperatureK, ColdestK, HottestK, "K");
        Number(list, "dead-load-factor", $"dead load factor of case '{loadCase.Name}'", loadCase.DeadLoadFactor, 0, 100, "");
        foreach (var l in loadCase.MastLoads)
        {
            for (var i = 0; i < l.Points.Count; i++)
            {
                if (!Finite(l.Points[i].LoadNPerM) || !double.IsFinite(l.Points[i].HeightM) || (i > 0 && l.Points[i].HeightM < l.Points[i - 1].HeightM))
                {
                    list.Add(Error("line-load", $"A line load of case '{loadCase.Name}' has a point that is no number or lies below the one before it.", l.Points[i].ToString(), "finite loads at heights that do not fall", "Sort the points by height."));
                    break;
                }
            }
        }

        foreach (var l in loadCase.GuyLoads.Where(l => !mast.Guys.Any(g => g.Name == l.GuyName)))
        {
            list.Add(UnknownGuy(mast, loadCase, l.GuyName));
        }

        foreach (var name in loadCase.AbsentGuys.Where(n => !mast.Guys.Any(g => g.Name == n)))
        {
            list.Add(UnknownGuy(mast, loadCase, name));
        }

        if (loadCase.GuyLoads.Any(l => !Finite(l.LoadNPerM)) || loadCase.PointLoads.Any(p => !Finite(p.ForceN) || !Finite(p.MomentNm)))
        {
            list.Add(Error("load-number", $"A load of case '{loadCase.Name}' is not a number.", null, "finite numbers", "Check how the load was computed."));
        }

        foreach (var p in loadCase.PointLoads)
        {
            Number(list, "point-load-height", $"height of a point load of case '{loadCase.Name}'", p.HeightM, 0, mast.HeightM, "m");
        }

        return list;
    }

    private static void Segments(GuyedMast mast, List<Finding> list)
    {
        if (mast.Segments.Count == 0)
        {
            list.Add(Error("mast-empty", "The mast has no segments.", null, "at least one", "Add a segment from height 0 to the top."));
            return;
        }

        var at = 0.0;
        foreach (var s in mast.Segments)
        {
            if (!(s.TopM > s.BottomM) || Math.Abs(s.BottomM - at) > 1e-6 || !double.IsFinite(s.TopM))
            {
                list.Add(Error("segment-gap", $"Segment '{s.Name}' must start where the one below ends and reach higher.", $"{Text(s.BottomM)} to {Text(s.TopM)} m", $"from {Text(at)} m up", "Order the segments from the foot up, without gaps or overlaps."));
            }

            at = s.TopM;
            Positive(list, "segment-stiffness", $"EA of segment '{s.Name}'", s.AxialStiffnessN);
            Positive(list, "segment-stiffness", $"EI of segment '{s.Name}'", s.BendingStiffnessNm2);
            Positive(list, "segment-stiffness", $"GJ of segment '{s.Name}'", s.TorsionalStiffnessNm2);
            if (!(s.ShearStiffnessN > 0))
            {
                Positive(list, "segment-stiffness", $"shear stiffness of segment '{s.Name}'", s.ShearStiffnessN);
            }

            Number(list, "segment-weight", $"weight per metre of segment '{s.Name}'", s.WeightNPerM, 0, 1e7, "N/m");
        }
    }

    private static void OneGuy(GuyedMast mast, Guy g, List<Finding> list)
    {
        Positive(list, "guy-cable", $"area of guy '{g.Name}'", g.Cable.AreaM2);
        Positive(list, "guy-cable", $"modulus of guy '{g.Name}'", g.Cable.ModulusPa);
        Number(list, "guy-cable", $"weight per metre of guy '{g.Name}'", g.Cable.WeightNPerM, 0, 1e5, "N/m");
        Number(list, "guy-height", $"attachment height of guy '{g.Name}'", g.AttachmentHeightM, 1e-6, mast.HeightM, "m");
        if (!Finite(g.AnchorM))
        {
            list.Add(Error("guy-anchor", $"The anchor of guy '{g.Name}' is not a number.", g.AnchorM.ToString(), "finite numbers", "Give x, y and z of the anchor."));
            return;
        }

        var chord = g.UndeformedChord(mast.FootM);
        if (chord.Z <= 0)
        {
            list.Add(Error("anchor-above-attachment", $"The anchor of guy '{g.Name}' is not below its attachment: the guy would lift the mast instead of holding it down.", $"{Text(-chord.Z)} m above", "below the attachment", "Attach the guy higher or anchor it lower."));
        }

        if (Math.Sqrt((chord.X * chord.X) + (chord.Y * chord.Y)) < 0.01 * chord.Length)
        {
            list.Add(Error("guy-upright", $"Guy '{g.Name}' runs straight down beside the mast and cannot hold it sideways.", null, "an anchor away from the mast", "Move the anchor outwards."));
        }

        foreach (var p in g.Pieces)
        {
            Positive(list, "guy-piece", $"length of piece '{p.Name}' of guy '{g.Name}'", p.LengthM);
            Positive(list, "guy-piece", $"stiffness of piece '{p.Name}' of guy '{g.Name}'", p.AxialStiffnessN);
            Number(list, "guy-piece", $"weight per metre of piece '{p.Name}' of guy '{g.Name}'", p.WeightNPerM, 0, 1e5, "N/m");
            Number(list, "guy-piece", $"end weight of piece '{p.Name}' of guy '{g.Name}'", p.EndWeightN, 0, 1e6, "N");
        }

        if (g.Pieces.Count > 0 && g.Pieces.Sum(p => p.LengthM) - g.Pieces.Max(p => p.LengthM) > 0.9 * chord.Length)
        {
            list.Add(Error("guy-pieces-long", $"The pieces of guy '{g.Name}' leave no room for its longest one.", $"{Text(g.Pieces.Sum(p => p.LengthM))} m", $"about {Text(chord.Length)} m in all", "Shorten the pieces."));
        }

        if (g.Setting.IsTension)
        {
            Number(list, "guy-tension", $"initial tension of guy '{g.Name}'", g.Setting.Value, 1e-3, 0.05 * Math.Max(g.Cable.AxialStiffnessN, 1), "N");
        }
        else
        {
            Number(list, "guy-length", $"unstressed length of guy '{g.Name}'", g.Setting.Value, 0.95 * chord.Length, 1.5 * chord.Length, "m");
        }
    }

    private static Finding UnknownGuy(GuyedMast mast, LoadCase loadCase, string name) =>
        Error("unknown-guy", $"Case '{loadCase.Name}' speaks of a guy '{name}' that the mast does not have.", name, string.Join(", ", mast.Guys.Select(g => g.Name)), "Use the name of a guy of this mast.");

    private static void Positive(List<Finding> list, string code, string what, double value) => Number(list, code, what, value, 1e-30, 1e30, "");

    private static void Number(List<Finding> list, string code, string what, double value, double least, double most, string unit)
    {
        if (!double.IsFinite(value) || value < least || value > most)
        {
            var allowed = least <= 1e-30 && most >= 1e30 ? "above zero" : $"{Text(least)} to {Text(most)} {unit}".TrimEnd();
            list.Add(Error(code, $"The {what} cannot be used.", Text(value), allowed, $"Give a value within {allowed}."));
        }
    }

    private static bool Finite(Vec3 v) => double.IsFinite(v.X) && double.IsFinite(v.Y) && double.IsFinite(v.Z);

    private static string Text(double value) => value.ToString("G6", CultureInfo.InvariantCulture);

    private static Finding Error(string code, string message, string? value, string? allowed, string? wayOut) =>
        new(code, Severity.Error, message, null, value, allowed, wayOut);
}
