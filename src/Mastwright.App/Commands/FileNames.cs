using System.CommandLine;
using System.CommandLine.Parsing;

namespace Mastwright.App.Commands;

/// <summary>Marks what must name a file or a folder: an empty name, as a variable of the shell that is not set leaves it, is told before anything is done.</summary>
internal static class FileNames
{
    public static Option<string?> NamesFile(this Option<string?> option)
    {
        option.Validators.Add(result => Look(result, option.Name, option.Required));
        return option;
    }

    public static Argument<T> NamesFile<T>(this Argument<T> argument)
    {
        argument.Validators.Add(result => Look(result, argument.Name, argument.Arity.MinimumNumberOfValues > 0));
        return argument;
    }

    private static void Look(SymbolResult result, string name, bool required)
    {
        if (result.Tokens.Any(t => t.Value.Trim().Length == 0 || t.Value.Contains('\0', StringComparison.Ordinal)))
        {
            result.AddError($"{name}: this is no name of a file. {(required ? "Name one." : $"Name one, or leave {name} out.")}");
        }
    }
}
