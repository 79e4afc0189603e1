namespace Linewright.Tests.Files;

/// <summary>A file for an outside program to read; gone when the test ends.</summary>
internal sealed class ScratchFile : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("linewright").FullName;

    public ScratchFile(string name, Action<Stream> write)
    {
        Path = System.IO.Path.Combine(folder, name);
        using var stream = File.Create(Path);
        write(stream);
    }

    public string Path { get; }

    public void Dispose() => Directory.Delete(folder, recursive: true);
}
