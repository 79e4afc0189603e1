using System.Globalization;
using System.Text;

namespace Linewright.Paper;

/// <summary>Says which letters of a text paper cannot show, and what would work.</summary>
/// <remarks>Both weights of the type write the same letters, so the regular one answers for both.</remarks>
public static class UnprintedLetters
{
    // So many letters are named one by one; further ones are counted.
    private const int MostNamed = 6;

    /// <summary>A sentence on the letters that paper cannot show, itself fit for paper; null where it shows them all.</summary>
    /// <param name="what">What the text is, with its article: the name.</param>
    /// <param name="text">The text; null lacks nothing.</param>
    public static string? Sentence(string what, string? text)
    {
        var lacking = Typeface.Of(TextWeight.Regular).Lacking(text ?? "");
        if (lacking.Count == 0)
        {
            return null;
        }

        var named = string.Join(", ", lacking.Take(MostNamed).Select(NameOf));
        var rest = lacking.Count > MostNamed ? string.Create(CultureInfo.InvariantCulture, $" and {lacking.Count - MostNamed} more") : "";
        var (letters, they, stand) = lacking.Count == 1 ? ("a letter", "it", "stands") : ("letters", "they", "stand");
        return $"Paper cannot show {letters} of {what} ({named}{rest}): {they} {stand} as {Typeface.Unprinted} in PDF and SVG, and as written in tables, JSON and 3D files. Latin, Greek and Cyrillic letters can be shown.";
    }

    // As the standard writes a character's number: U+6E2F. Source: Unicode Standard 16, appendix A.
    private static string NameOf(Rune rune) => string.Create(CultureInfo.InvariantCulture, $"U+{rune.Value:X4}");
}
