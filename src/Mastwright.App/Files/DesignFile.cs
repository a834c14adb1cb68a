using System.Collections.Immutable;
using System.Text;
using Mastwright.Analysis;
using Mastwright.Model.Design;
using Mastwright.Model.Text;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;

namespace Mastwright.App.Files;

/// <summary>Reads and writes design files on disk; whatever goes wrong becomes a finding.</summary>
public static class DesignFile
{
    /// <summary>Name shown for the station built into the program.</summary>
    public const string BuiltInName = "built-in station";

    /// <summary>The text of the commented starter file, which is also the built-in station.</summary>
    public static string StarterText()
    {
        using var stream = typeof(DesignFile).Assembly.GetManifestResourceStream("starter.yaml")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    /// <summary>Reads a design; null for the built-in station.</summary>
    public static DesignReading Read(string? path)
    {
        if (path is null)
        {
            return Parse(StarterText(), BuiltInName);
        }

        if (Directory.Exists(path))
        {
            return Refused(new Finding("file-unreadable", Severity.Error, "This is a folder and cannot be read as a design file.", new Place(path, 0, 0, ""), path,
                WayOut: "Name a file in it."));
        }

        try
        {
            var size = new FileInfo(path).Length;
            return size > YamlText.MaxCharacters * 4L
                ? Refused(YamlText.TooLarge(path, size))
                : Parse(File.ReadAllText(path, Encoding.UTF8), path);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return Refused(new Finding("no-file", Severity.Error, "There is no such file.", new Place(path, 0, 0, ""), path,
                WayOut: "Check the path, or start a new file with `mastwright new`."));
        }
        catch (Exception e) when (e is UnauthorizedAccessException or IOException)
        {
            return Refused(new Finding("file-unreadable", Severity.Error, "The file cannot be read: " + e.Message, new Place(path, 0, 0, ""), path,
                WayOut: "Check that it is a file, that you may read it and that no other program holds it."));
        }
    }

    /// <summary>Writes a new file in one step: it appears whole or not at all, and never replaces another.</summary>
    /// <returns>The finding when it could not be written; null when it was.</returns>
    public static Finding? WriteNew(string path, string text) => WholeFile.Write(path, text, replace: false);

    private static DesignReading Parse(string text, string name) => DesignReader.Read(text, name, CatalogueNames.Of);

    private static DesignReading Refused(Finding finding) => new(null, [finding], [], ImmutableDictionary<string, Place>.Empty);
}
