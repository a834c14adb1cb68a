using System.Text;

namespace Mastwright.App.Tests;

/// <summary>A console stream that each test, with everything it starts, can send to a writer of its own.</summary>
internal sealed class RoutedWriter(TextWriter usual) : TextWriter
{
    private readonly AsyncLocal<TextWriter?> chosen = new();

    public override Encoding Encoding => usual.Encoding;

    private TextWriter Target => chosen.Value ?? usual;

    public static RoutedWriter InPlaceOf(TextWriter usual, Action<TextWriter> set)
    {
        var routed = new RoutedWriter(usual);
        set(routed);
        return routed;
    }

    /// <summary>Sends what this flow of execution writes from now on elsewhere.</summary>
    public void To(TextWriter writer) => chosen.Value = writer;

    public override void Write(char value) => Target.Write(value);

    public override void Write(char[] buffer, int index, int count) => Target.Write(buffer, index, count);

    public override void Write(string? value) => Target.Write(value);

    public override void WriteLine(string? value) => Target.WriteLine(value);

    public override Task WriteLineAsync(string? value) => Target.WriteLineAsync(value);

    public override void Flush() => Target.Flush();
}
