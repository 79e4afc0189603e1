namespace Linewright.Cli;

/// <summary>Opens a file that the designer named, or says in a sentence why it cannot be read.</summary>
internal static class NamedFile
{
    /// <summary>Opens for reading.</summary>
    /// <param name="path">As it was written.</param>
    /// <param name="what">What it should be: a brief.</param>
    /// <exception cref="RefusalException">It cannot be opened.</exception>
    public static FileStream Open(string path, string what)
    {
        // Only a brief may come from standard input.
        var or = what == "a brief" ? ", or use - for standard input" : "";
        try
        {
            return Directory.Exists(path)
                ? throw new RefusalException(ExitCode.Asked, $"{path}: read a folder, expected {what}; name the JSON file in it")
                : new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
        }
        catch (Exception slip) when (slip is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new RefusalException(ExitCode.Asked, $"{path}: no such file, expected {what}; check the path{or}");
        }
        catch (UnauthorizedAccessException)
        {
            throw new RefusalException(ExitCode.Asked, $"{path}: may not be read, expected {what}; check the rights of the file");
        }
        catch (Exception slip) when (slip is IOException or ArgumentException or NotSupportedException)
        {
            throw new RefusalException(ExitCode.Asked, $"{path}: cannot be opened, expected {what}; {slip.Message}");
        }
    }
}
