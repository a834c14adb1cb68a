using System.Text;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;

namespace Mastwright.App.Files;

/// <summary>Reads and writes files beside the design; whatever goes wrong becomes a finding.</summary>
internal static class OutputFile
{
    private const long MostBytes = 200_000_000;

    /// <summary>Writes a file whole or not at all; an earlier file of that name is replaced in one step.</summary>
    public static Finding? Write(string path, string text) => WholeFile.Write(path, text, replace: true);

    /// <summary>Reads a file's text.</summary>
    public static (string? Text, Finding? Problem) Read(string path)
    {
        try
        {
            return new FileInfo(path).Length > MostBytes
                ? (null, new Finding("file-large", Severity.Error, "The file is too large to be what it should be.", new Place(path, 0, 0, ""), path, "200 MB", "Check that it is the right file."))
                : (File.ReadAllText(path, Encoding.UTF8), null);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return (null, new Finding("no-file", Severity.Error, "There is no such file.", new Place(path, 0, 0, ""), path, WayOut: "Check the path."));
        }
        catch (Exception e) when (e is UnauthorizedAccessException or IOException or ArgumentException)
        {
            return (null, new Finding("file-unreadable", Severity.Error, "The file cannot be read: " + e.Message, new Place(path, 0, 0, ""), path, WayOut: "Check that it is a file and that you may read it."));
        }
    }
}
