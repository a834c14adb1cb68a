using System.CommandLine;
using Mastwright.App.Files;
using Mastwright.Build;
using Mastwright.Build.Materials;
using Mastwright.Report.Terminal;

namespace Mastwright.App.Commands;

/// <summary>The options of a command that counts money: the user's own prices, and a sample file to start them from.</summary>
internal static class PriceOptions
{
    public static Option<string?> Prices { get; } = new Option<string?>("--prices") { Description = "Your own prices as CSV (part,unit,price,currency,pack,invented,note); left out, invented samples." }.NamesFile();

    public static Option<string?> Sample { get; } = new Option<string?>("--sample") { Description = "Write the invented sample prices as a CSV file to start your own from; nothing else is done." }.NamesFile();

    /// <summary>The prices asked for; null when none were. What cannot be read comes back as findings.</summary>
    public static Reading<PriceList>? Read(ParseResult parsed)
    {
        if (parsed.GetValue(Prices) is not { } path)
        {
            return null;
        }

        var (text, problem) = OutputFile.Read(path);
        return text is null ? new Reading<PriceList>(null, [problem!]) : PriceFile.Read(text, path);
    }

    /// <summary>Writes the sample file; null when none was asked for.</summary>
    public static int? WriteSample(ParseResult parsed)
    {
        if (parsed.GetValue(Sample) is not { } path)
        {
            return null;
        }

        if (OutputFile.Write(path, PriceFile.Sample()) is { } unwritten)
        {
            FindingsView.Write(Shared.Messages(), [unwritten]);
            return ExitCode.WrongInput;
        }

        Console.Out.WriteLine($"Wrote {path}: every price in it is invented; put in your own.");
        return ExitCode.Pass;
    }
}
