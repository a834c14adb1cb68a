using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace Mastwright.Workbench.Hosting;

/// <summary>How the workbench is served.</summary>
public sealed record ServeOptions
{
    /// <summary>Largest body of a request, bytes.</summary>
    public const long LargestBody = 4_500_000;

    /// <summary>The design file; null for the built-in station.</summary>
    public string? File { get; init; }

    /// <summary>Text of the built-in station.</summary>
    public required string SampleText { get; init; }

    /// <summary>Address to listen on; loopback unless the user asks for more.</summary>
    public IPAddress Address { get; init; } = IPAddress.Loopback;

    /// <summary>Port; 0 for a free one.</summary>
    public int Port { get; init; } = 4870;

    /// <summary>Certificate for a secure connection; null for a plain one. Phones open the outdoors page without a connection only when it came over a secure one.</summary>
    public X509Certificate2? Certificate { get; init; }

    /// <summary>Folder a design without file is saved into.</summary>
    public string SaveFolder { get; init; } = Environment.CurrentDirectory;

    /// <summary>Folder for unsaved text of a design without file.</summary>
    public string SpareFolder { get; init; } = Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify), "mastwright");

    /// <summary>The word that must be in the address when the page can be reached from other machines; null on loopback.</summary>
    public string? Key => IPAddress.IsLoopback(Address) ? null : key;

    private readonly string key = Convert.ToHexString(RandomNumberGenerator.GetBytes(16)).ToLowerInvariant();
}
