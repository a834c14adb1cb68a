using Mastwright.Model.Trails;

namespace Mastwright.Report.Documents;

/// <summary>Writes files in one step: a file appears whole or not at all, and an old one stays until the new one is there.</summary>
public static class WholeFile
{
    /// <summary>What stands in the way of writing a file of this name; null when nothing is seen.</summary>
    /// <param name="path">The file.</param>
    /// <param name="replace">Whether a file of this name may be replaced.</param>
    public static Finding? Obstacle(string path, bool replace)
    {
        if (path.Trim().Length == 0 || path.Contains('\0', StringComparison.Ordinal))
        {
            return Bad("file-unnamed", "This is no name of a file.", path, "Name the file to write.");
        }

        if (Directory.Exists(path))
        {
            return Bad("file-unwritable", "This is a folder, not a file.", path, "Name a file in it.");
        }

        if (!replace && File.Exists(path))
        {
            return Bad("file-exists", "There is a file of this name already; nothing was written.", path, "Choose another name, or move the old file away.");
        }

        var folder = Path.GetDirectoryName(Path.GetFullPath(path));
        return folder is not null && !Directory.Exists(folder) ? Bad("file-unwritable", "The folder of this file does not exist.", path, "Make the folder first, or choose another.") : null;
    }

    /// <summary>Writes the file, in UTF-8.</summary>
    /// <returns>The finding when it could not be written, in which case an old file is untouched; null when it was.</returns>
    public static Finding? Write(string path, string text, bool replace) => Write(path, System.Text.Encoding.UTF8.GetBytes(text), replace);

    /// <summary>Writes the file.</summary>
    /// <returns>The finding when it could not be written, in which case an old file is untouched; null when it was.</returns>
    public static Finding? Write(string path, byte[] bytes, bool replace)
    {
        if (Obstacle(path, replace) is { } obstacle)
        {
            return obstacle;
        }

        var temporary = $"{path}.{Environment.ProcessId}.part";
        try
        {
            using (var stream = new FileStream(temporary, FileMode.Create, FileAccess.Write))
            {
                stream.Write(bytes);
                stream.Flush(flushToDisk: true);
            }

            File.Move(temporary, path, replace);
            return null;
        }
        catch (Exception e) when (e is UnauthorizedAccessException or IOException)
        {
            Remove(temporary);
            return Bad("file-unwritable", "The file cannot be written: " + e.Message, path, "Check that you may write there, that the disk is not full or read-only, and that no program holds the file.");
        }
    }

    private static void Remove(string temporary)
    {
        try
        {
            File.Delete(temporary);
        }
        catch (Exception e) when (e is UnauthorizedAccessException or IOException)
        {
            // The half-written file stays where it is, under its own name: the message already says that the place cannot be written.
        }
    }

    private static Finding Bad(string code, string message, string path, string wayOut) => new(code, Severity.Error, message, new Place(path, 0, 0, ""), path, WayOut: wayOut);
}
