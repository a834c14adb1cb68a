namespace Mastwright.Tests.Shared;

/// <summary>
/// Holds a text against the approved one in the repository. Set MASTWRIGHT_APPROVE=1 to write the approved texts anew;
/// the change then shows in review.
/// </summary>
internal static class Approved
{
    public static void Matches(string actual, params string[] path)
    {
        var file = Repository.File(path);
        var text = actual.ReplaceLineEndings("\n");
        if (Environment.GetEnvironmentVariable("MASTWRIGHT_APPROVE") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllText(file, text);
        }

        Assert.True(File.Exists(file), $"{string.Join('/', path)} is missing: run the tests once with MASTWRIGHT_APPROVE=1 and review what they write.");
        Assert.Equal(File.ReadAllText(file).ReplaceLineEndings("\n"), text);
    }
}
