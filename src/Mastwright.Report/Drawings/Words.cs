using System.Reflection;
using Mastwright.Model.Design;
using Mastwright.Model.Schema;

namespace Mastwright.Report.Drawings;

/// <summary>The design file's own words for its choices, for lettering.</summary>
internal static class Words
{
    public static string Pivot(Pivot pivot) => Of(pivot);

    public static string Electrodes(Electrodes electrodes) => Of(electrodes);

    private static string Of<T>(T value)
        where T : struct, Enum => typeof(T).GetField(value.ToString())!.GetCustomAttribute<WordAttribute>()!.Word.Replace('-', ' ');
}
