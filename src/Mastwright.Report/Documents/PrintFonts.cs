using SkiaSharp;
using Svg.Skia.TypefaceProviders;

namespace Mastwright.Report.Documents;

/// <summary>The free fonts that go into every printed page, read from inside the program so that every machine prints alike.</summary>
internal static class PrintFonts
{
    /// <summary>The family drawings ask for.</summary>
    public const string Family = "DejaVu Sans";

    private static readonly Lazy<SKTypeface> Regular = new(() => Load("Sans"));
    private static readonly Lazy<SKTypeface> Heavy = new(() => Load("SansBold"));

    /// <summary>The face for running text or for heads.</summary>
    public static SKTypeface Face(bool bold) => bold ? Heavy.Value : Regular.Value;

    /// <summary>The face at a size in points, spaced as the face was designed and not as a screen would.</summary>
    public static SKFont Font(float size, bool bold) => new(Face(bold), size) { Subpixel = true, LinearMetrics = true, Hinting = SKFontHinting.None };

    private static SKTypeface Load(string name)
    {
        using var stream = typeof(PrintFonts).Assembly.GetManifestResourceStream($"Mastwright.Report.Fonts.{name}.ttf")
            ?? throw new InvalidOperationException($"The font {name} is not in the assembly.");
        using var data = SKData.Create(stream);
        return SKTypeface.FromData(data);
    }

    /// <summary>Gives drawings the same faces, whatever family they name.</summary>
    internal sealed class ForDrawings : ITypefaceProvider
    {
        /// <inheritdoc/>
        public SKTypeface? FromFamilyName(string fontFamily, SKFontStyleWeight fontWeight, SKFontStyleWidth fontWidth, SKFontStyleSlant fontStyle) =>
            Face((int)fontWeight >= (int)SKFontStyleWeight.SemiBold);
    }
}
