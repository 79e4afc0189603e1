using System.Collections.Immutable;

namespace Linewright.Solids.Outlines;

/// <summary>One line of a view.</summary>
/// <param name="Points">Two at least; a line that closes has its first point once more at the end.</param>
/// <param name="Kind">Why it is there.</param>
/// <param name="IsVisible">False where something stands before it.</param>
/// <param name="Tag">Of the body that it belongs to.</param>
public sealed record OutlineLine(ImmutableArray<FlatPoint> Points, OutlineKind Kind, bool IsVisible, int Tag)
{
    /// <summary>Length along the line, mm.</summary>
    public double Length
    {
        get
        {
            var length = 0.0;
            for (var i = 1; i < Points.Length; i++)
            {
                length += (Points[i] - Points[i - 1]).Length;
            }

            return length;
        }
    }
}
