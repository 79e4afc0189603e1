using System.Text;

namespace Linewright.Delivery;

/// <summary>What the files of a piece are called after: its name, fit for every disk and for the head of an answer.</summary>
/// <remarks>
/// Letters and digits of any script stay, in lower case; all else, be it a slash, a colon or an emoji, is one hyphen. A name without a letter
/// or a digit gives piece.
/// </remarks>
public static class FileStem
{
    // So many characters at most, four bytes each: with an ending they stay under the 255 bytes that most disks allow a name.
    private const int Longest = 50;

    /// <summary>The stem of a piece's files.</summary>
    public static string Of(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var stem = new StringBuilder();
        var count = 0;
        foreach (var rune in name.EnumerateRunes())
        {
            if (Rune.IsLetterOrDigit(rune) && rune != Rune.ReplacementChar)
            {
                stem.Append(Rune.ToLowerInvariant(rune).ToString());
            }
            else if (stem.Length > 0 && stem[^1] != '-')
            {
                stem.Append('-');
            }
            else
            {
                continue;
            }

            if (++count == Longest)
            {
                break;
            }
        }

        var plain = stem.ToString().TrimEnd('-');
        return plain.Length == 0 ? "piece" : plain;
    }
}
