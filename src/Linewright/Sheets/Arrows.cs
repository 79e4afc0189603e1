using Linewright.Paper;

namespace Linewright.Sheets;

/// <summary>Arrowheads. Standard: ISO 129-1: closed and filled, about 15 degrees, as long as the lettering is high.</summary>
internal static class Arrows
{
    /// <summary>Length of a head, mm.</summary>
    public const double LengthMm = 2.5;

    // Half the width of a head of 15 degrees.
    private const double HalfMm = 0.33;

    /// <summary>A head whose point is at a place and looks in a direction.</summary>
    public static Mark Head(PaperPoint point, PaperPoint direction)
    {
        var along = direction * (1 / direction.Length);
        PaperPoint back = point - along * LengthMm, side = new PaperPoint(-along.Y, along.X) * HalfMm;
        return Area.Polygon(point, back + side, back - side);
    }
}
