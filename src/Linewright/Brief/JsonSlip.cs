using System.Text;
using System.Text.Json;

namespace Linewright.Brief;

/// <summary>Says in our own words why a text is not JSON; the framework's words name types, not places in a brief.</summary>
internal static class JsonSlip
{
    /// <summary>The fault at the byte where reading stopped.</summary>
    public static BriefFault Describe(ReadOnlySpan<byte> text, JsonException slip, bool isTooDeep)
    {
        var offset = Offset(text, slip.LineNumber ?? 0, slip.BytePositionInLine ?? 0);
        var (line, column) = TextPlace.Of(text, offset);
        var rest = text[offset..];
        var (read, expected, hint) = Words(text, offset, rest, isTooDeep);
        return new BriefFault("", line, column, read, expected, hint);
    }

    private static (string Read, string Expected, string Hint) Words(ReadOnlySpan<byte> text, int offset, ReadOnlySpan<byte> rest, bool isTooDeep)
    {
        if (isTooDeep)
        {
            return ("braces or brackets nested more than 32 deep", "groups of plain fields", "a brief is two levels deep");
        }

        if (rest.TrimStart(" \t\r\n"u8).IsEmpty)
        {
            return ("the end of the file", "the rest of the brief", "close every \" and every { that was opened");
        }

        if (rest.StartsWith("//"u8) || rest.StartsWith("/*"u8) || rest[0] == '#')
        {
            return ("a comment", "plain JSON, which has none", "remove the comment");
        }

        var word = Encoding.UTF8.GetString(rest[..WordLength(rest)]);
        if (word.TrimStart('-', '+') is "NaN" or "Infinity" or "nan" or "inf" or "infinity")
        {
            return (word, "a number", "NaN and Infinity are no measures; write a plain number");
        }

        var before = text[..offset].TrimEnd(" \t\r\n"u8);
        if (rest[0] is (byte)'}' or (byte)']' && !before.IsEmpty && before[^1] == (byte)',')
        {
            return ($"a comma before {(char)rest[0]}", "another field", "remove the comma before it");
        }

        var shown = rest[0] < 0x20 ? "a control character" : $"'{BriefScan.Plain(First(rest))}'";
        return rest[0] switch
        {
            (byte)'\'' => ("a single quote", "JSON, which quotes with \"", "write \" instead"),
            (byte)'\n' or (byte)'\r' => ("the end of the line", "the rest of a text in quotes", "close the \" on the same line"),
            (byte)'+' or (byte)'.' => (shown, "a number", "begin a number with a digit or -"),
            >= (byte)'0' and <= (byte)'9' => (shown, "a number in JSON's way", "write 3.5, not 03.5 or 3,5"),
            _ when rest[0] == (byte)'"' => ("a text in quotes", "a comma, a colon or a closing brace before it", "a comma may be missing at the end of the line above"),
            _ => (shown, "JSON", "look for a missing quote, comma, colon or brace just before"),
        };
    }

    private static string First(ReadOnlySpan<byte> rest)
    {
        Rune.DecodeFromUtf8(rest, out var rune, out _);
        return rune.ToString();
    }

    private static int WordLength(ReadOnlySpan<byte> rest)
    {
        var end = 0;
        while (end < rest.Length && end < 12 && (char.IsAsciiLetterOrDigit((char)rest[end]) || rest[end] is (byte)'-' or (byte)'+'))
        {
            end++;
        }

        return end;
    }

    // The framework counts lines from 0 and gives the byte within the line.
    private static int Offset(ReadOnlySpan<byte> text, long line, long byteInLine)
    {
        var start = 0;
        for (; line > 0; line--)
        {
            var next = text[start..].IndexOf((byte)'\n');
            if (next < 0)
            {
                break;
            }

            start += next + 1;
        }

        return (int)Math.Clamp(start + byteInLine, 0, text.Length);
    }
}
