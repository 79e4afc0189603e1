namespace Linewright.Cli;

/// <summary>What the program tells the shell.</summary>
internal static class ExitCode
{
    /// <summary>Done.</summary>
    public const int Done = 0;

    /// <summary>Done, but a check says that the piece must not be made like this.</summary>
    public const int CheckFails = 1;

    /// <summary>The brief or the arguments are wrong.</summary>
    public const int Asked = 2;

    /// <summary>The files could not be written, or the fault is ours.</summary>
    public const int Ours = 3;

    /// <summary>Stopped by Ctrl+C. Common practice: 128 and the number of the signal.</summary>
    public const int Stopped = 130;

    /// <summary>What the framework answers to a request to end; we answer <see cref="Stopped"/> to that too.</summary>
    public const int Ended = 143;
}
