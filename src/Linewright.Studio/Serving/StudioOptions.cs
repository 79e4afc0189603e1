namespace Linewright.Studio.Serving;

/// <summary>How the studio is started.</summary>
public sealed record StudioOptions
{
    /// <summary>The port that is tried first; another one is taken where it is in use.</summary>
    public const int UsualPort = 4816;

    /// <summary>The folder of briefs.</summary>
    public required string Folder { get; init; }

    /// <summary>The brief to open, a name in the folder; null for the demo piece.</summary>
    public string? Brief { get; init; }

    /// <summary>The port; 0 for any that is free, null for the usual one.</summary>
    public int? Port { get; init; }

    /// <summary>True where a browser should be opened.</summary>
    public bool OpensBrowser { get; init; }

    /// <summary>Where addresses and messages are printed.</summary>
    public required TextWriter Out { get; init; }

    /// <summary>Reads a path given on the command line: a brief, or a folder of briefs, or nothing for the present folder.</summary>
    /// <exception cref="FileNotFoundException">There is neither.</exception>
    public static StudioOptions For(string? path, TextWriter output)
    {
        if (path is null)
        {
            return new StudioOptions { Folder = Environment.CurrentDirectory, Out = output };
        }

        if (Directory.Exists(path))
        {
            return new StudioOptions { Folder = path, Out = output };
        }

        var full = Path.GetFullPath(path);
        return File.Exists(full)
            ? new StudioOptions { Folder = Path.GetDirectoryName(full)!, Brief = Path.GetFileName(full), Out = output }
            : throw new FileNotFoundException($"{path}: no such brief and no such folder");
    }
}
