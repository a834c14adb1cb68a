using System.Text;
using Mastwright.Model.Text;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;

namespace Mastwright.Workbench.Desks;

/// <summary>What came of saving.</summary>
/// <param name="Saved">Whether the text is on the disk.</param>
/// <param name="Conflict">Whether the file was changed by someone else meanwhile.</param>
/// <param name="Finding">What went wrong; null when nothing did.</param>
public sealed record SaveOutcome(bool Saved, bool Conflict, Finding? Finding);

/// <summary>
/// The design file on the disk and, beside it, the copy of what has not been saved. Both are written in one step:
/// whole or not at all.
/// </summary>
public sealed class DeskFile
{
    private readonly Lock gate = new();
    private readonly List<string> formerSpares = [];
    private string? onDisk;
    private string? offered;
    private bool spareIsOurs;

    /// <summary>A file, or no file yet.</summary>
    /// <param name="path">The design file; null for the built-in station.</param>
    /// <param name="spareFolder">Where unsaved text goes while there is no file.</param>
    public DeskFile(string? path, string spareFolder)
    {
        Path = path is null ? null : System.IO.Path.GetFullPath(path);
        Spare = Path is null ? System.IO.Path.Combine(spareFolder, "unnamed.yaml.unsaved") : Path + ".unsaved";
    }

    /// <summary>Full path of the file; null while there is none.</summary>
    public string? Path { get; private set; }

    /// <summary>Path of the unsaved copy.</summary>
    public string Spare { get; private set; }

    /// <summary>Reads the file; a finding when it cannot be read.</summary>
    public (string? Text, Finding? Finding) Read()
    {
        lock (gate)
        {
            try
            {
                var info = new FileInfo(Path!);
                if (info.Length > YamlText.MaxCharacters * 4L)
                {
                    return (null, YamlText.TooLarge(Path!, info.Length));
                }

                onDisk = File.ReadAllText(Path!, Encoding.UTF8);
                return (onDisk, null);
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                return (null, Unreadable(e));
            }
        }
    }

    /// <summary>Whether the file on the disk is no longer the one last read or written here.</summary>
    public bool ChangedOnDisk()
    {
        lock (gate)
        {
            try
            {
                return Path is not null && onDisk is not null && File.Exists(Path) && File.ReadAllText(Path, Encoding.UTF8) != onDisk;
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                return false;
            }
        }
    }

    /// <summary>Saves, unless the file has changed on the disk and <paramref name="overwrite"/> is not set.</summary>
    public SaveOutcome Save(string text, bool overwrite)
    {
        if (Path is null)
        {
            return new(false, false, new Finding("no-file-name", Severity.Error, "This design has no file yet.", WayOut: "Give it a name."));
        }

        if (!overwrite && onDisk is null && File.Exists(Path))
        {
            return new(false, true, new Finding("file-changed", Severity.Warning, "There is a file of this name that was not read here.", new Place(Path, 0, 0, ""),
                WayOut: "Keep what is on this desk, or take what is in the file."));
        }

        if (!overwrite && ChangedOnDisk())
        {
            return new(false, true, new Finding("file-changed", Severity.Warning, "The file was changed by another program since it was opened here.", new Place(Path, 0, 0, ""),
                WayOut: "Keep what is on this desk, or take what is in the file."));
        }

        lock (gate)
        {
            if (WholeFile.Write(Path, text, replace: true) is { } finding)
            {
                return new(false, false, finding with { WayOut = finding.WayOut + " Your text is still here." });
            }

            onDisk = text;
            foreach (var spare in formerSpares.Append(Spare))
            {
                Delete(spare);
            }

            formerSpares.Clear();
            return new(true, false, null);
        }
    }

    /// <summary>Takes a plain file name in a folder; refuses paths, and names that are taken.</summary>
    public Finding? TakeName(string folder, string name)
    {
        var plain = name.Trim();
        if (plain.Length is 0 or > 100 || plain != System.IO.Path.GetFileName(plain) || plain.StartsWith('.') || plain.IndexOfAny(System.IO.Path.GetInvalidFileNameChars()) >= 0
            || plain.IndexOfAny(['\\', '/', ':']) >= 0)
        {
            return new Finding("bad-file-name", Severity.Error, "This is not a plain file name.", Value: name, Allowed: "a name without folders, such as station.yaml", WayOut: "Choose another name.");
        }

        var full = System.IO.Path.Combine(folder, plain.EndsWith(".yaml", StringComparison.OrdinalIgnoreCase) || plain.EndsWith(".yml", StringComparison.OrdinalIgnoreCase) ? plain : plain + ".yaml");
        if (File.Exists(full))
        {
            return new Finding("file-exists", Severity.Error, "There is a file of this name already.", Value: name, WayOut: "Choose another name, or open that file with `mastwright serve`.");
        }

        // The copy under the former name goes only once the text stands in the file; unsaved text of a design that had this name is put aside.
        lock (gate)
        {
            var spare = full + ".unsaved";
            try
            {
                if (spare != Spare && File.Exists(spare))
                {
                    File.Move(spare, Asides(spare).First(a => !File.Exists(a)));
                }
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                return new Finding("file-exists", Severity.Error, $"Unsaved text of an earlier design of this name lies there and cannot be put aside: {e.Message}", Value: name, WayOut: "Choose another name.");
            }

            formerSpares.Add(Spare);
            Path = full;
            Spare = spare;
            formerSpares.Remove(Spare);
        }

        return null;
    }

    /// <summary>Keeps unsaved text beside the file. Failure is told, never thrown: the text itself is still on the desk.</summary>
    public Finding? Keep(string text)
    {
        lock (gate)
        {
            try
            {
                Directory.CreateDirectory(System.IO.Path.GetDirectoryName(Spare)!);
                if (WholeFile.Write(Spare, text, replace: true) is { } finding)
                {
                    return NoCopy(finding.Message);
                }

                spareIsOurs = true;
                return null;
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                return NoCopy(e.Message);
            }
        }
    }

    /// <summary>Unsaved text left by an earlier run and not yet answered for, the newest first, with its time; null when there is none or it equals the file.</summary>
    public (string Text, DateTimeOffset At)? LeftBehind()
    {
        lock (gate)
        {
            offered = null;
            foreach (var spare in Asides(Spare).TakeWhile(File.Exists).Reverse().Prepend(Spare).Skip(spareIsOurs ? 1 : 0))
            {
                try
                {
                    if (File.Exists(spare) && new FileInfo(spare).Length <= YamlText.MaxCharacters * 4L && File.ReadAllText(spare, Encoding.UTF8) is var text && text != onDisk)
                    {
                        offered = spare;
                        return (text, File.GetLastWriteTime(spare));
                    }
                }
                catch (Exception e) when (e is IOException or UnauthorizedAccessException)
                {
                    // It stays where it is; the next one may be readable.
                }
            }

            return null;
        }
    }

    /// <summary>Makes room for another unsaved copy while the reader has not said yet what becomes of the one that is offered.</summary>
    public void SetAside()
    {
        lock (gate)
        {
            if (offered != Spare)
            {
                return;
            }

            try
            {
                var aside = Asides(Spare).First(a => !File.Exists(a));
                File.Move(Spare, aside);
                offered = aside;
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                // The text is still offered from memory; only a crash now would lose it.
            }
        }
    }

    /// <summary>The reader has taken up or dropped what was offered.</summary>
    public void Answered()
    {
        lock (gate)
        {
            if (offered is not null && (offered != Spare || !spareIsOurs))
            {
                Delete(offered);
            }

            offered = null;
        }
    }

    /// <summary>Drops the unsaved copy.</summary>
    public void Forget()
    {
        lock (gate)
        {
            Delete(Spare);
        }
    }

    private static IEnumerable<string> Asides(string spare) => Enumerable.Range(1, int.MaxValue - 1).Select(i => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{spare}.{i}"));

    private static void Delete(string spare)
    {
        try
        {
            File.Delete(spare);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // It will be offered again next time, which loses nothing.
        }
    }

    private Finding NoCopy(string why) => new("no-unsaved-copy", Severity.Warning, "No copy of the unsaved text can be kept: " + why, new Place(Spare, 0, 0, ""), WayOut: "Save soon, or make the folder writable.");

    private Finding Unreadable(Exception e) => new("file-unreadable", Severity.Error, "The file cannot be read: " + e.Message, new Place(Path!, 0, 0, ""),
        WayOut: "Check that it is a file and that you may read it.");
}
