namespace Linewright.Studio.Pieces;

/// <summary>Takes what a writer of files writes, without a disk.</summary>
internal static class FilesInMemory
{
    /// <summary>The files by their names.</summary>
    /// <param name="write">Writes them; it is given what opens a new file by its name.</param>
    public static IReadOnlyDictionary<string, byte[]> Of(Action<Func<string, Stream>> write)
    {
        var files = new Dictionary<string, MemoryStream>(StringComparer.Ordinal);
        write(name => files[name] = new MemoryStream());

        // Closed streams still give their bytes.
        return files.ToDictionary(file => file.Key, file => file.Value.ToArray(), StringComparer.Ordinal);
    }
}
