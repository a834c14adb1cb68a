namespace Mastwright.App;

/// <summary>What the command line returns to the shell.</summary>
public static class ExitCode
{
    /// <summary>Done, and every check passes.</summary>
    public const int Pass = 0;

    /// <summary>Done, but a check fails or cannot be decided.</summary>
    public const int CheckFails = 1;

    /// <summary>The input is wrong; nothing was computed.</summary>
    public const int WrongInput = 2;

    /// <summary>Stopped by the user.</summary>
    public const int Cancelled = 130;
}
