using System.Collections.Immutable;
using Linewright.Solids.Space;

namespace Linewright.Paper;

/// <summary>What draws a line: width on the paper and style, always black.</summary>
/// <param name="WidthMm">Above zero.</param>
/// <param name="Style">How it is broken up.</param>
public readonly record struct Pen(double WidthMm, LineStyle Style = LineStyle.Solid)
{
    // Lengths in line widths. Standard: ISO 128-2 (before 2020: ISO 128-20), dash 12, gap 3, long dash 24, dot 0.5.
    private static readonly ImmutableArray<double> DashedWidths = [12, 3], ChainWidths = [24, 3, 0.5, 3];

    /// <summary>Width on the paper, mm.</summary>
    public double WidthMm { get; } = Guard.Positive(WidthMm);

    /// <summary>Lengths of stroke and gap in turn, mm; empty where the line is continuous.</summary>
    public ImmutableArray<double> DashesMm
    {
        get
        {
            var width = WidthMm;
            ImmutableArray<double> widths = Style switch
            {
                LineStyle.Dashed => DashedWidths,
                LineStyle.Chain => ChainWidths,
                _ => [],
            };
            return [.. widths.Select(share => share * width)];
        }
    }
}
