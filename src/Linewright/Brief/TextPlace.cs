namespace Linewright.Brief;

/// <summary>Turns an offset in UTF-8 text into the line and column that an editor shows: both from 1, columns in characters.</summary>
internal static class TextPlace
{
    /// <summary>The place of the byte at an offset; an offset past the end is the end.</summary>
    public static (int Line, int Column) Of(ReadOnlySpan<byte> utf8, long offset)
    {
        var before = utf8[..(int)Math.Min(offset, utf8.Length)];
        var line = 1 + before.Count((byte)'\n');
        var inLine = before[(before.LastIndexOf((byte)'\n') + 1)..];

        // A byte order mark is not a character of the line.
        if (line == 1 && inLine.StartsWith("\uFEFF"u8))
        {
            inLine = inLine[3..];
        }

        var column = 1;
        foreach (var b in inLine)
        {
            // Bytes 10xxxxxx continue a character.
            column += (b & 0xC0) == 0x80 ? 0 : 1;
        }

        return (line, column);
    }
}
