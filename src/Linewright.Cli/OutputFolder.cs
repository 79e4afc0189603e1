using System.Text.Json;
using Linewright.Delivery;

namespace Linewright.Cli;

/// <summary>A folder that appears whole or not at all: written beside its place, then moved there.</summary>
/// <remarks>
/// What may be replaced: nothing, an empty folder, or a folder with a report.json of ours. Files of other kinds in
/// it are somebody's work and are kept from harm unless forced. Disposing before <see cref="Publish"/> leaves no trace.
/// </remarks>
internal sealed class OutputFolder : IDisposable
{
    private const long LargestReport = 64L << 20;

    // What make writes; anything else in a folder came from somebody else.
    private static readonly string[] OurFiles = ["report.json", "parts.csv", "piece.3mf", "piece.glb", "piece-flat.glb", "plate.3mf", "tree.csv", "sheet.pdf", "outlines.dxf", .. QuoteFiles.Names];

    private readonly Lock gate = new();
    private readonly string temporary;
    private bool isGone;

    private OutputFolder(string path, string temporary)
    {
        Path = path;
        this.temporary = temporary;
    }

    /// <summary>Where the folder will stand.</summary>
    public string Path { get; }

    /// <summary>Makes a hidden folder beside the place asked for.</summary>
    /// <exception cref="RefusalException">The place is taken by something that is not ours, or cannot be written.</exception>
    public static OutputFolder Open(string path, bool force)
    {
        if (string.IsNullOrWhiteSpace(path))
        {
            throw new RefusalException(ExitCode.Asked, "--out: read an empty name, expected a folder; name one that is new, or an earlier one of ours");
        }

        try
        {
            var full = System.IO.Path.TrimEndingDirectorySeparator(System.IO.Path.GetFullPath(path));
            if (Directory.Exists(full) && Directory.ResolveLinkTarget(full, returnFinalTarget: true) is { } target)
            {
                full = target.FullName;
            }

            var parent = System.IO.Path.GetDirectoryName(full);
            if (parent is null)
            {
                throw Refuse(path, "the root of the disk", "name a folder in it");
            }

            RefuseForeign(path, full, force);
            Directory.CreateDirectory(parent);
            var beside = System.IO.Path.Combine(parent, $".{System.IO.Path.GetFileName(full)}.{System.IO.Path.GetRandomFileName()}");
            Directory.CreateDirectory(beside);
            return new OutputFolder(full, beside);
        }
        catch (Exception slip) when (slip is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw Refuse(path, $"no place to write ({Why(path, slip)})", "choose a folder that may be written");
        }
    }

    /// <summary>A new file in the folder, by its path with /; folders on the way are made.</summary>
    public Stream Create(string name)
    {
        if (name.Split('/').Any(step => step is "" or "." or "..") || System.IO.Path.IsPathRooted(name))
        {
            throw new ArgumentException($"'{name}' does not lie in the folder", nameof(name));
        }

        lock (gate)
        {
            if (isGone)
            {
                throw new OperationCanceledException();
            }

            var file = System.IO.Path.Combine(temporary, name.Replace('/', System.IO.Path.DirectorySeparatorChar));
            Directory.CreateDirectory(System.IO.Path.GetDirectoryName(file)!);
            return new FileStream(file, FileMode.CreateNew, FileAccess.Write, FileShare.None);
        }
    }

    /// <summary>Moves the folder to its place; an earlier one of ours is gone then.</summary>
    /// <exception cref="RefusalException">It could not be moved; the earlier folder stands as it was.</exception>
    public void Publish()
    {
        lock (gate)
        {
            if (isGone)
            {
                throw new OperationCanceledException();
            }

            var earlier = temporary + ".earlier";
            try
            {
                var hasEarlier = Directory.Exists(Path);
                if (hasEarlier)
                {
                    Directory.Move(Path, earlier);
                }

                MoveOrRestore(hasEarlier ? earlier : null);
                isGone = true;
                Remove(earlier);
            }
            catch (Exception slip) when (slip is IOException or UnauthorizedAccessException)
            {
                throw Refuse(Path, $"no place to write ({Why(Path, slip)})", "close what uses the folder, or choose another");
            }
        }
    }

    /// <summary>Removes what was written so far; nothing more can be written.</summary>
    public void Discard()
    {
        lock (gate)
        {
            if (!isGone)
            {
                isGone = true;
                Remove(temporary);
            }
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Discard();

        // A file that was open when the folder was discarded may have kept it alive.
        Remove(temporary);
    }

    // In our own words where we know better than the system, whose words name the hidden folder.
    private static string Why(string path, Exception slip)
    {
        for (var at = System.IO.Path.GetDirectoryName(System.IO.Path.GetFullPath(path)); at is not null; at = System.IO.Path.GetDirectoryName(at))
        {
            if (File.Exists(at))
            {
                return $"{at} is a file";
            }
        }

        return slip switch
        {
            UnauthorizedAccessException => "no right to write there",
            PathTooLongException => "the path is too long",
            FileNotFoundException or DirectoryNotFoundException => "no folder can be made there",
            _ when slip.Message.IndexOf(" : '", StringComparison.Ordinal) is > 0 and var end => slip.Message[..end],
            _ => slip.Message.TrimEnd('.'),
        };
    }

    private void MoveOrRestore(string? earlier)
    {
        try
        {
            Directory.Move(temporary, Path);
        }
        catch when (earlier is not null)
        {
            Directory.Move(earlier, Path);
            throw;
        }
    }

    private static void RefuseForeign(string path, string full, bool force)
    {
        if (File.Exists(full))
        {
            throw Refuse(path, "a file", "name a folder that does not exist yet");
        }

        if (!Directory.Exists(full))
        {
            return;
        }

        if (!MayBeWritten(full))
        {
            throw Refuse(path, "a folder that may not be written", "change its rights, or name another");
        }

        if (!Directory.EnumerateFileSystemEntries(full).Any())
        {
            return;
        }

        if (!IsOurReport(System.IO.Path.Combine(full, "report.json")))
        {
            throw Refuse(path, "a folder that is not empty and has no report.json of ours", "name another folder, or empty this one yourself");
        }

        if (!force && FirstForeign(full) is { } foreign)
        {
            throw Refuse(path, $"an earlier folder of ours with {foreign} in it", "move that away, or add --force to lose it");
        }
    }

    // Asked before the work and not after it; only trying tells, whatever the system of rights.
    private static bool MayBeWritten(string folder)
    {
        try
        {
            var trial = System.IO.Path.Combine(folder, $".{System.IO.Path.GetRandomFileName()}");
            new FileStream(trial, FileMode.CreateNew, FileAccess.Write, FileShare.None, 1, FileOptions.DeleteOnClose).Dispose();
            return true;
        }
        catch (UnauthorizedAccessException)
        {
            return false;
        }
    }

    private static string? FirstForeign(string full) => Directory
        .EnumerateFiles(full, "*", SearchOption.AllDirectories)
        .Select(file => System.IO.Path.GetRelativePath(full, file).Replace(System.IO.Path.DirectorySeparatorChar, '/'))
        .Where(name => !OurFiles.Contains(name, StringComparer.Ordinal)
            && !(name.StartsWith("parts/", StringComparison.Ordinal) && name.EndsWith(".stl", StringComparison.Ordinal))
            && !(name.StartsWith("sheet-", StringComparison.Ordinal) && name.EndsWith(".svg", StringComparison.Ordinal)))
        .Order(StringComparer.Ordinal)
        .FirstOrDefault();

    private static bool IsOurReport(string file)
    {
        try
        {
            if (!File.Exists(file) || new FileInfo(file).Length > LargestReport)
            {
                return false;
            }

            using var stream = File.OpenRead(file);
            using var report = JsonDocument.Parse(stream);
            return report.RootElement.ValueKind == JsonValueKind.Object
                && report.RootElement.TryGetProperty("brief", out _)
                && report.RootElement.TryGetProperty("layout", out _)
                && report.RootElement.TryGetProperty("findings", out _);
        }
        catch (JsonException)
        {
            return false;
        }
    }

    // Clearing away is a courtesy: where it fails, what was asked for is done or refused all the same.
    private static void Remove(string folder)
    {
        try
        {
            if (Directory.Exists(folder))
            {
                Directory.Delete(folder, recursive: true);
            }
        }
        catch (Exception slip) when (slip is IOException or UnauthorizedAccessException)
        {
            return;
        }
    }

    private static RefusalException Refuse(string path, string found, string hint)
        => new(ExitCode.Ours, $"{path}: found {found}, expected a new folder or an earlier one of ours; {hint}");
}
