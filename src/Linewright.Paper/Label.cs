namespace Linewright.Paper;

/// <summary>One line of text. Its place is on the foot of its letters.</summary>
/// <param name="At">Place of the foot at the beginning, middle or end of the line.</param>
/// <param name="Text">One line; no tabs, no line ends; held as the type can write it.</param>
/// <param name="Style">Size and weight.</param>
/// <param name="Align">Which part of the line stands at the place.</param>
/// <param name="IsUpward">True where it reads from the bottom to the top, as dimensions of heights do.</param>
public sealed record Label(PaperPoint At, string Text, TextStyle Style, Align Align = Align.Left, bool IsUpward = false) : Mark
{
    /// <summary>One line, as it stands on paper.</summary>
    public string Text { get; } = Style.Face.Printable(Text);

    /// <summary>Width of the line, mm.</summary>
    public double WidthMm => Style.WidthOf(Text);

    /// <summary>Where the first letter's foot begins.</summary>
    public PaperPoint Start
    {
        get
        {
            var back = Align switch { Align.Left => 0, Align.Centre => WidthMm / 2, _ => WidthMm };
            return IsUpward ? new PaperPoint(At.X, At.Y + back) : new PaperPoint(At.X - back, At.Y);
        }
    }

    /// <inheritdoc/>
    /// <remarks>From the lowest descender to the top of the capitals, which is all that the words of a sheet need.</remarks>
    public override PaperBox Box
    {
        get
        {
            double under = Style.Face.DescentShare * Style.BodyMm, width = WidthMm;
            var start = Start;
            return IsUpward
                ? new PaperBox(start.X - Style.CapitalMm, start.Y - width, start.X + under, start.Y)
                : new PaperBox(start.X, start.Y - Style.CapitalMm, start.X + width, start.Y + under);
        }
    }

    /// <inheritdoc/>
    public override Mark Moved(PaperPoint step) => this with { At = At + step };
}
