using System.Security.Cryptography;
using System.Text.Json;
using Mastwright.Model.Design;

namespace Mastwright.Analysis;

/// <summary>A short name for a design's content: equal designs have equal fingerprints, whatever their text looks like.</summary>
public static class Fingerprint
{
    private static readonly JsonSerializerOptions Compact = new();

    /// <summary>The fingerprint: 16 hexadecimal digits of the SHA-256 of the design's values. What is only shown (name, notes, units) does not count.</summary>
    public static string Of(Station station)
    {
        var bare = station with { Name = "", Notes = "", Units = default };
        return Convert.ToHexString(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes(bare, Compact)))[..16].ToLowerInvariant();
    }
}
