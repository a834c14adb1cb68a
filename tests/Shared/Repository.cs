namespace Mastwright.Tests.Shared;

/// <summary>Finds files of the repository from wherever a test runs.</summary>
internal static class Repository
{
    /// <summary>The folder that holds the solution.</summary>
    public static string Root { get; } = Find();

    /// <summary>A file of the repository.</summary>
    public static string File(params string[] parts) => Path.Combine([Root, .. parts]);

    /// <summary>Every example station.</summary>
    public static IEnumerable<string> Examples => Directory.EnumerateFiles(File("examples"), "*.yaml").Order();

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (System.IO.File.Exists(Path.Combine(folder.FullName, "Mastwright.slnx")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException("The tests do not run inside the repository.");
    }
}
