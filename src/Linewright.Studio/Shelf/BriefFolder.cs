using System.Security.Cryptography;
using System.Text.RegularExpressions;

namespace Linewright.Studio.Shelf;

/// <summary>The one folder in which the studio reads and writes briefs. Names only: no paths, no links that lead out.</summary>
/// <remarks>
/// Saving is atomic: written beside, flushed to the disk, moved over. The working copy of a piece lies beside it as a hidden
/// file and is renewed while somebody works, so that a crash loses at most a second.
/// </remarks>
public sealed partial class BriefFolder
{
    /// <summary>The name under which work without a file is kept.</summary>
    public const string Untitled = "untitled.json";

    // Far over any brief; what is larger is not shown.
    private const long LargestBytes = 1 << 20;

    private const int MostListed = 200;

    private readonly Lock gate = new();

    /// <summary>Takes a folder that exists.</summary>
    /// <exception cref="DirectoryNotFoundException">There is none.</exception>
    public BriefFolder(string path)
    {
        Path = System.IO.Path.TrimEndingDirectorySeparator(System.IO.Path.GetFullPath(path));
        if (!Directory.Exists(Path))
        {
            throw new DirectoryNotFoundException($"{path}: no such folder");
        }
    }

    /// <summary>Where it lies.</summary>
    public string Path { get; }

    /// <summary>The briefs in it, last changed first.</summary>
    public IReadOnlyList<BriefFile> List() =>
    [
        .. new DirectoryInfo(Path).EnumerateFiles("*.json")
            .Where(file => IsName(file.Name) && !file.Name.EndsWith(".schema.json", StringComparison.OrdinalIgnoreCase) && file.Length <= LargestBytes && file.LinkTarget is null)
            .OrderByDescending(file => file.LastWriteTimeUtc)
            .Take(MostListed)
            .Select(file => new BriefFile(file.Name, new DateTimeOffset(file.LastWriteTimeUtc), file.Length, File.Exists(WorkingPath(file.Name)))),
    ];

    /// <summary>The text of a brief and its tag.</summary>
    /// <exception cref="FileRefusedException">No such name, or it leads out of the folder.</exception>
    public (byte[] Text, string Tag) Read(string name)
    {
        var path = Place(name);
        return ReadBytes(path) is { } bytes ? (bytes, TagOf(bytes)) : throw new FileRefusedException(name, "no such brief in the folder", IsMissing: true);
    }

    /// <summary>Writes a brief, atomically.</summary>
    /// <param name="name">A plain name that ends in .json.</param>
    /// <param name="text">The whole text.</param>
    /// <param name="tag">What the caller believes is there: a tag, or null for a new file; * writes over whatever there is.</param>
    /// <exception cref="FileRefusedException">The name is no plain name, or something else is there.</exception>
    public string Save(string name, byte[] text, string? tag)
    {
        ArgumentNullException.ThrowIfNull(text);
        var path = Place(name);
        lock (gate)
        {
            var there = ReadBytes(path);
            if (tag != "*" && (there is null ? null : TagOf(there)) != tag)
            {
                throw new FileRefusedException(name, there is null ? "the file is gone" : tag is null ? "a file of that name is there already" : "the file has been changed by somebody else", IsConflict: true);
            }

            WriteWhole(path, text);
            return TagOf(text);
        }
    }

    /// <summary>The working copy of a piece, null where there is none.</summary>
    public byte[]? Working(string name)
    {
        _ = Place(name);
        return ReadBytes(WorkingPath(name));
    }

    /// <summary>Keeps a working copy beside the piece.</summary>
    public void Keep(string name, byte[] text)
    {
        _ = Place(name);
        lock (gate)
        {
            WriteWhole(WorkingPath(name), text);
        }
    }

    /// <summary>Clears the working copy away.</summary>
    public void Drop(string name)
    {
        _ = Place(name);
        lock (gate)
        {
            File.Delete(WorkingPath(name));
        }
    }

    private static bool IsName(string name) => PlainName().IsMatch(name) && !Reserved().IsMatch(name);

    // No separators, no drives, no control characters, nothing hidden; room for the working copy's own ending.
    [GeneratedRegex("""^(?!\.)[^/\\:*?"<>|%\x00-\x1f\x7f]{1,100}(?<![ .])\.json$""", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex PlainName();

    // Names of devices on Windows, whatever their ending.
    [GeneratedRegex("""^(con|prn|aux|nul|com[0-9]|lpt[0-9])\.""", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Reserved();

    private static string TagOf(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes).AsSpan(0, 12));

    private static byte[]? ReadBytes(string path)
    {
        try
        {
            return new FileInfo(path) is { Exists: true, Length: <= LargestBytes } ? File.ReadAllBytes(path) : null;
        }
        catch (Exception slip) when (slip is FileNotFoundException or DirectoryNotFoundException)
        {
            return null;
        }
    }

    private static void WriteWhole(string path, byte[] bytes)
    {
        var beside = path + ".tmp";
        using (var file = new FileStream(beside, FileMode.Create, FileAccess.Write, FileShare.None))
        {
            file.Write(bytes);
            file.Flush(flushToDisk: true);
        }

        File.Move(beside, path, overwrite: true);
    }

    private string WorkingPath(string name) => System.IO.Path.Combine(Path, $".{name}.working");

    private string Place(string name)
    {
        if (name is null || !IsName(name))
        {
            throw new FileRefusedException(name ?? "", "not a plain name that ends in .json");
        }

        var path = System.IO.Path.Combine(Path, name);
        return System.IO.Path.GetDirectoryName(System.IO.Path.GetFullPath(path)) != Path || new FileInfo(path).LinkTarget is not null
            ? throw new FileRefusedException(name, "leads out of the folder")
            : path;
    }
}
