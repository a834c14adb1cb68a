using System.Text;
using Mastwright.Model.Trails;
using Microsoft.AspNetCore.Components.Forms;
using Microsoft.JSInterop;

namespace Mastwright.Workbench.Keeping;

/// <summary>Reads the text of a file that was dropped on a page; whatever stands in the way becomes a finding.</summary>
public static class DroppedText
{
    /// <summary>Reads a file whole.</summary>
    /// <param name="file">The file.</param>
    /// <param name="mostBytes">Largest size taken.</param>
    public static async Task<(string? Text, Finding? Problem)> Read(IBrowserFile file, long mostBytes)
    {
        var place = new Place(file.Name, 0, 0, "");
        if (file.Size > mostBytes)
        {
            return (null, new Finding("file-large", Severity.Error, $"{file.Name} is too large to be what it should be.", place, $"{file.Size / 1e6:0.#} MB", $"up to {mostBytes / 1e6:0.#} MB", "Check that it is the right file."));
        }

        try
        {
            using var bytes = new MemoryStream();
            await using (var stream = file.OpenReadStream(mostBytes))
            {
                await stream.CopyToAsync(bytes);
            }

            return Text(bytes.ToArray(), place);
        }
        catch (Exception e) when (e is IOException or JSException or OperationCanceledException or InvalidOperationException)
        {
            return (null, new Finding("file-unreadable", Severity.Error, $"{file.Name} could not be read: {e.Message}", place, WayOut: "Choose it again."));
        }
    }

    // A measurement or an export is text: bytes that are none are told as such before any reader sees them.
    private static (string? Text, Finding? Problem) Text(byte[] bytes, Place place)
    {
        try
        {
            var text = bytes switch
            {
                [0xFF, 0xFE, ..] => new UnicodeEncoding(false, false, true).GetString(bytes.AsSpan(2)),
                [0xFE, 0xFF, ..] => new UnicodeEncoding(true, false, true).GetString(bytes.AsSpan(2)),
                [0xEF, 0xBB, 0xBF, ..] => new UTF8Encoding(false, true).GetString(bytes.AsSpan(3)),
                _ => Utf8OrLatin(bytes),
            };
            return text.Contains('\0', StringComparison.Ordinal)
                ? (null, NoText(place))
                : text.Length == 0 ? (null, new Finding("file-empty", Severity.Error, $"{place.File} is empty.", place, WayOut: "Choose another file.")) : (text, null);
        }
        catch (DecoderFallbackException)
        {
            return (null, NoText(place));
        }
    }

    // Analysers write remarks in the characters of their country; only the figures matter, and those are ASCII.
    private static string Utf8OrLatin(byte[] bytes)
    {
        try
        {
            return new UTF8Encoding(false, true).GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            return Encoding.Latin1.GetString(bytes);
        }
    }

    private static Finding NoText(Place place) => new("file-no-text", Severity.Error, $"{place.File} is not a text file.", place, WayOut: "Choose a file the analyser or this program exported as text.");
}
