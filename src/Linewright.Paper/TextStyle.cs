using Linewright.Solids.Space;

namespace Linewright.Paper;

/// <summary>Size and weight of lettering.</summary>
/// <param name="CapitalMm">Height of a capital letter on the paper: the nominal size of lettering in ISO 3098.</param>
/// <param name="Weight">How strong its strokes are.</param>
public readonly record struct TextStyle(double CapitalMm, TextWeight Weight = TextWeight.Regular)
{
    // From line to line, in capitals. Standard: ISO 3098-1, type B: 17/14 without accents, 22/14 with them.
    private const double LineShare = 22.0 / 14;

    /// <summary>Height of a capital letter on the paper, mm.</summary>
    public double CapitalMm { get; } = Guard.Positive(CapitalMm);

    /// <summary>From one line's foot to the next one's, mm.</summary>
    public double LineMm => CapitalMm * LineShare;

    /// <summary>The type that it is set in.</summary>
    public Typeface Face => Typeface.Of(Weight);

    /// <summary>Size of the type's body, mm: what font-size means in print and on screen.</summary>
    public double BodyMm => CapitalMm / Face.CapitalShare;

    /// <summary>Width of a line of text, mm.</summary>
    public double WidthOf(string text) => Face.WidthOf(text) * BodyMm;
}
