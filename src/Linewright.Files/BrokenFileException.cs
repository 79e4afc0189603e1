using System.Globalization;

namespace Linewright.Files;

/// <summary>A file that does not hold what its format promises: says which format, at which byte, and what was wrong.</summary>
public sealed class BrokenFileException : Exception
{
    public BrokenFileException()
    {
    }

    public BrokenFileException(string message)
        : base(message)
    {
    }

    public BrokenFileException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    /// <summary>Describes a fault at a place.</summary>
    /// <param name="format">Name of the format, such as "STL".</param>
    /// <param name="offset">Bytes from the start of the file.</param>
    /// <param name="fault">What was read and what was expected.</param>
    public BrokenFileException(string format, long offset, string fault)
        : base(string.Create(CultureInfo.InvariantCulture, $"{format}: byte {offset}: {fault}"))
        => Offset = offset;

    /// <summary>Where the fault is, bytes from the start of the file.</summary>
    public long Offset { get; }
}
