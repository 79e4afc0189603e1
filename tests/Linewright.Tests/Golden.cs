using System.Text;

namespace Linewright.Tests;

/// <summary>Compares output with a file in the repository; on a difference the actual output is written beside it.</summary>
internal static class Golden
{
    /// <summary>Fails where the bytes differ from the file. The actual bytes lie in NAME.received.EXTENSION then.</summary>
    public static void Match(byte[] actual, string path)
    {
        var file = Path.Combine(Repository.Root, path);
        var received = Path.ChangeExtension(file, ".received" + Path.GetExtension(file));
        if (File.Exists(file) && File.ReadAllBytes(file).AsSpan().SequenceEqual(actual))
        {
            File.Delete(received);
            return;
        }

        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        File.WriteAllBytes(received, actual);
        Assert.Equal(File.Exists(file) ? File.ReadAllText(file) : "", Encoding.UTF8.GetString(actual));
        Assert.Fail($"{path} differs in its bytes though not in its text.");
    }
}
