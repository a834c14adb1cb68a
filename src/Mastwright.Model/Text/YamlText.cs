using System.Collections.Immutable;
using Mastwright.Model.Trails;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Mastwright.Model.Text;

/// <summary>
/// Reads YAML 1.2 text into a tree that remembers every place. Anchors and aliases are refused, so no short
/// text can unfold into a huge one; size, depth and number of pieces are bounded.
/// </summary>
public static class YamlText
{
    /// <summary>Longest text accepted, in characters.</summary>
    public const int MaxCharacters = 1_000_000;

    /// <summary>Deepest nesting accepted.</summary>
    public const int MaxDepth = 24;

    /// <summary>Most pieces accepted.</summary>
    public const int MaxPieces = 50_000;

    /// <summary>Parses <paramref name="text"/>.</summary>
    /// <param name="text">The text.</param>
    /// <param name="file">The name used in places.</param>
    /// <returns>The root, or null when the text cannot be used at all, and the findings.</returns>
    public static (TextNode? Root, ImmutableArray<Finding> Findings) Parse(string text, string file)
    {
        if (text.Length > MaxCharacters)
        {
            return (null, [TooLarge(file, text.Length)]);
        }

        var reading = new Reading(new Parser(new Scanner(new StringReader(text), skipComments: true)), file);
        try
        {
            var root = reading.ReadDocument();
            return (root, reading.Findings.ToImmutableArray());
        }
        catch (YamlException e)
        {
            var place = new Place(file, (int)e.Start.Line, (int)e.Start.Column, "");
            reading.Findings.Add(new Finding("yaml", Severity.Error, "The text is not well-formed YAML: " + Plain(e), place,
                WayOut: "Look at the indentation, the colons and the quotes on this line and the one above it."));
            return (null, reading.Findings.ToImmutableArray());
        }
        catch (InvalidOperationException)
        {
            // The scanner gives up this way on some broken flow lists instead of naming a mark.
            reading.Findings.Add(new Finding("yaml", Severity.Error, "The text is not well-formed YAML somewhere after this line.", reading.Last,
                WayOut: "Look for a bracket or brace that is opened and never closed."));
            return (null, reading.Findings.ToImmutableArray());
        }
    }

    /// <summary>The finding for a file that is too large to be a design.</summary>
    public static Finding TooLarge(string file, long characters) => new(
        "file-too-large", Severity.Error, "The file is too large to be a design file.", new Place(file, 0, 0, ""),
        $"{characters:N0} characters", $"at most {MaxCharacters:N0} characters",
        "Check that this is the file you meant; a whole station with many masts needs less than a tenth of the limit.");

    private static string Plain(YamlException e)
    {
        var message = e.InnerException?.Message ?? e.Message;
        var end = message.IndexOf("): ", StringComparison.Ordinal);
        return end >= 0 && message.StartsWith('(') ? message[(end + 3)..] : message;
    }

    private sealed class Reading(IParser parser, string file)
    {
        private int pieces;

        public List<Finding> Findings { get; } = [];

        public Place Last { get; private set; } = new(file, 1, 1, "");

        public TextNode? ReadDocument()
        {
            parser.Consume<StreamStart>();
            if (parser.Accept<StreamEnd>(out _))
            {
                Findings.Add(new Finding("empty-file", Severity.Error, "The file is empty.", new Place(file, 1, 1, ""),
                    WayOut: "Start from the commented file that `mastwright new` writes."));
                return null;
            }

            parser.Consume<DocumentStart>();
            var root = Read("", 0);
            parser.Consume<DocumentEnd>();
            if (!parser.Accept<StreamEnd>(out _))
            {
                Findings.Add(new Finding("several-documents", Severity.Error, "The file holds more than one YAML document.",
                    PlaceOf(parser.Current!.Start, ""), WayOut: "Keep one station in one file."));
            }

            return root;
        }

        private TextNode? Read(string path, int depth)
        {
            var current = parser.Current ?? throw new YamlException("unexpected end");
            var place = PlaceOf(current.Start, path);
            Last = place;
            if (++pieces > MaxPieces || depth > MaxDepth)
            {
                throw new YamlException(current.Start, current.End,
                    $"more than {MaxPieces:N0} values or {MaxDepth} levels of nesting: this is no design file");
            }

            if (current is AnchorAlias || current is NodeEvent { Anchor.IsEmpty: false })
            {
                throw new YamlException(current.Start, current.End,
                    "anchors (&) and aliases (*) are not part of the design format; write the value out, or put a text that begins with & or * in quotes");
            }

            switch (current)
            {
                case Scalar scalar:
                    parser.MoveNext();
                    return new ScalarText(place, scalar.Value);
                case SequenceStart:
                    return ReadList(place, path, depth);
                case MappingStart:
                    return ReadMap(place, path, depth);
                default:
                    throw new YamlException(current.Start, current.End, "unexpected " + current.GetType().Name);
            }
        }

        private ListText ReadList(Place place, string path, int depth)
        {
            parser.MoveNext();
            var items = ImmutableArray.CreateBuilder<TextNode>();
            while (!parser.TryConsume<SequenceEnd>(out _))
            {
                items.Add(Read($"{path}[{items.Count}]", depth + 1)!);
            }

            return new ListText(place, items.ToImmutable());
        }

        private MapText ReadMap(Place place, string path, int depth)
        {
            parser.MoveNext();
            var entries = ImmutableArray.CreateBuilder<TextEntry>();
            while (!parser.TryConsume<MappingEnd>(out _))
            {
                var keyStart = parser.Current!.Start;
                if (parser.Current is not Scalar)
                {
                    throw new YamlException(keyStart, parser.Current.End, "a key must be a plain word");
                }

                var key = parser.Consume<Scalar>().Value;
                var inner = path.Length == 0 ? key : $"{path}.{key}";
                var keyPlace = PlaceOf(keyStart, inner);
                var value = Read(inner, depth + 1)!;
                if (entries.FirstOrDefault(e => e.Key == key) is { } first)
                {
                    Findings.Add(new Finding("key-twice", Severity.Error, $"The key “{key}” stands twice in the same place.", keyPlace,
                        WayOut: $"Remove one of the two; the first is on line {first.KeyPlace.Line}."));
                    continue;
                }

                entries.Add(new TextEntry(keyPlace, key, value));
            }

            return new MapText(place, entries.ToImmutable());
        }

        private Place PlaceOf(Mark mark, string path) => new(file, (int)mark.Line, (int)mark.Column, path);
    }
}
