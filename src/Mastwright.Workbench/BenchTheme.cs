using MudBlazor;

namespace Mastwright.Workbench;

/// <summary>The component library's colours and type, matched to the style sheet.</summary>
internal static class BenchTheme
{
    private static readonly string[] Sans = ["system-ui", "Segoe UI", "Noto Sans", "DejaVu Sans", "sans-serif"];

    public static MudTheme Instance { get; } = new()
    {
        PaletteLight = new PaletteLight
        {
            Primary = "#245b78",
            Background = "#f6f4ee",
            Surface = "#fffefa",
            TextPrimary = "#22282c",
            TextSecondary = "#545d63",
            LinesDefault = "#d8d5ca",
        },
        PaletteDark = new PaletteDark
        {
            Primary = "#8fc3dd",
            Background = "#171b1e",
            Surface = "#1f2529",
            TextPrimary = "#e4e6e3",
            TextSecondary = "#a9b1b4",
            LinesDefault = "#394147",
        },
        Typography = new Typography { Default = new DefaultTypography { FontFamily = Sans, FontSize = "0.95rem" } },
        LayoutProperties = new LayoutProperties { DefaultBorderRadius = "3px" },
    };
}
