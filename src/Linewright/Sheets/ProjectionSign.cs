using Linewright.Paper;

namespace Linewright.Sheets;

/// <summary>The sign for a projection: a cone cut short, seen from the side and from its end.</summary>
internal static class ProjectionSign
{
    /// <summary>In words.</summary>
    public static string NameOf(Projection projection) => projection == Projection.FirstAngle ? "first angle" : "third angle";

    /// <summary>The sign in the middle of a place, 5 mm high.</summary>
    /// <remarks>Standard: ISO 5456-2, graphical symbols; diameters 1 to 2.</remarks>
    public static IEnumerable<Mark> At(PaperPoint middle, Projection projection)
    {
        const double high = 2.5, small = 1.25, half = 2.75, apart = 4.2;

        // Seen from its small end the cone shows two circles. In first angle they stand at the far side of the large end.
        var isFirst = projection == Projection.FirstAngle;
        PaperPoint cone = new(middle.X + (isFirst ? -apart : apart), middle.Y), circles = new(middle.X + (isFirst ? apart : -apart), middle.Y);
        yield return new Stroke([new(cone.X - half, cone.Y - small), new(cone.X + half, cone.Y - high), new(cone.X + half, cone.Y + high), new(cone.X - half, cone.Y + small)], SheetPens.Wide, true);
        yield return Stroke.Circle(circles, high, SheetPens.Wide);
        yield return Stroke.Circle(circles, small, SheetPens.Wide);
        yield return new Stroke(new PaperPoint(cone.X - half - 1, cone.Y), new PaperPoint(cone.X + half + 1, cone.Y), SheetPens.Axis);
        yield return new Stroke(new PaperPoint(circles.X - high - 1, circles.Y), new PaperPoint(circles.X + high + 1, circles.Y), SheetPens.Axis);
        yield return new Stroke(new PaperPoint(circles.X, circles.Y - high - 0.6), new PaperPoint(circles.X, circles.Y + high + 0.6), SheetPens.Axis);
    }
}
