using System.Runtime.CompilerServices;

namespace Linewright.Tests;

/// <summary>Where the sources lie, for tests that read examples and expected outputs.</summary>
internal static class Repository
{
    /// <summary>The folder with Linewright.slnx: above the running tests, or above this file.</summary>
    public static string Root { get; } = Above(AppContext.BaseDirectory) ?? Above(Path.GetDirectoryName(Here())!)
        ?? throw new InvalidOperationException("Linewright.slnx was not found above the tests.");

    private static string? Above(string folder)
    {
        for (var at = new DirectoryInfo(folder); at is not null; at = at.Parent)
        {
            if (File.Exists(Path.Combine(at.FullName, "Linewright.slnx")))
            {
                return at.FullName;
            }
        }

        return null;
    }

    private static string Here([CallerFilePath] string path = "") => path;
}
