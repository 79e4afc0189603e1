using System.Collections.Immutable;

namespace Linewright.Paper;

/// <summary>Running text broken into lines between words.</summary>
public static class Paragraph
{
    /// <summary>The lines of a text within a width; a single word that is wider stands alone and is broken where it must be.</summary>
    /// <param name="text">Words parted by spaces; a line end starts a new line.</param>
    /// <param name="style">How it is set.</param>
    /// <param name="widthMm">Widest line.</param>
    public static ImmutableArray<string> Lines(string text, TextStyle style, double widthMm)
    {
        ArgumentNullException.ThrowIfNull(text);
        var lines = ImmutableArray.CreateBuilder<string>();
        foreach (var part in text.Split('\n'))
        {
            var line = "";
            foreach (var word in Words(part))
            {
                var longer = line.Length == 0 ? word : $"{line} {word}";
                if (style.WidthOf(longer) <= widthMm)
                {
                    line = longer;
                    continue;
                }

                if (line.Length > 0)
                {
                    lines.Add(line);
                }

                line = word;
                while (line.Length > 1 && style.WidthOf(line) > widthMm)
                {
                    var fits = Before(line, line.Length);
                    while (fits > 1 && style.WidthOf(line[..fits]) > widthMm)
                    {
                        fits = Before(line, fits);
                    }

                    if (fits == 0)
                    {
                        break;
                    }

                    lines.Add(line[..fits]);
                    line = line[fits..];
                }
            }

            lines.Add(line);
        }

        return lines.ToImmutable();
    }

    // A sign that stands alone, as that of a share, stays with the word before it.
    private static List<string> Words(string part)
    {
        var words = new List<string>();
        foreach (var word in part.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (words.Count > 0 && !word.Any(char.IsLetterOrDigit))
            {
                words[^1] += ' ' + word;
            }
            else
            {
                words.Add(word);
            }
        }

        return words;
    }

    // The end of the text without its last character, be that of one code unit or of two.
    private static int Before(string text, int end) => end - (end > 1 && char.IsLowSurrogate(text[end - 1]) && char.IsHighSurrogate(text[end - 2]) ? 2 : 1);

    /// <summary>The labels of a text from a top edge down.</summary>
    /// <param name="text">Words parted by spaces; a line end starts a new line.</param>
    /// <param name="style">How it is set.</param>
    /// <param name="left">Left edge, mm.</param>
    /// <param name="top">Top of the first line's capitals, mm.</param>
    /// <param name="widthMm">Widest line.</param>
    public static ImmutableArray<Label> Set(string text, TextStyle style, double left, double top, double widthMm)
        => [.. Lines(text, style, widthMm).Select((line, i) => new Label(new PaperPoint(left, top + style.CapitalMm + i * style.LineMm), line, style))];

    /// <summary>Height of so many lines, from the first one's capitals to the last one's foot, mm.</summary>
    public static double HeightOf(int lines, TextStyle style) => lines == 0 ? 0 : style.CapitalMm + (lines - 1) * style.LineMm;
}
