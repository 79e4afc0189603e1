using Linewright.Solids.Outlines;
using Linewright.Solids.Space;

namespace Linewright.Files;

/// <summary>A line of lettering in a DXF file, in the reader's own type.</summary>
/// <param name="At">Foot of its first letter, mm.</param>
/// <param name="HeightMm">Height of its capitals; above zero.</param>
/// <param name="Text">What it says: ASCII that can be seen, and no %, which begins a code of release 12.</param>
public sealed record DxfText(FlatPoint At, double HeightMm, string Text)
{
    /// <summary>Height of its capitals.</summary>
    public double HeightMm { get; } = Guard.Positive(HeightMm);

    /// <summary>ASCII that can be seen, without %.</summary>
    public string Text { get; } = Text.Length > 0 && Text.All(c => c is >= ' ' and <= '~' and not '%')
        ? Text
        : throw new ArgumentException($"lettering of a DXF file is ASCII that can be seen, without %; read '{Text}'", nameof(Text));
}
