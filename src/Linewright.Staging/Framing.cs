using Linewright.Pictures.Images;
using Linewright.Pictures.Scenes;
using Linewright.Solids.Space;

namespace Linewright.Staging;

/// <summary>Where a camera must stand so that points fill a frame of any proportions, exactly.</summary>
/// <remarks>
/// The view's direction is given. Each side of the frame is a plane through the eye; the eye stands on the far side of the
/// outermost point of each. Two opposite sides together bound how near it may come, and their difference where
/// it stands between them: a closed formula, no search. Derivation: docs/notes/staging.md.
/// </remarks>
internal static class Framing
{
    // A portrait lens draws no noses: 90 mm on a frame of 36 mm. Common practice: 85 to 100 mm.
    private const double LensMm = 90, FrameMm = 36;

    /// <summary>Half the view across and down, as tangents.</summary>
    public static (double Across, double Down) Tangents(PictureSize size)
    {
        var longSide = FrameMm / 2 / LensMm;
        return size.Width >= size.Height
            ? (longSide, longSide * size.Height / size.Width)
            : (longSide * size.Width / size.Height, longSide);
    }

    /// <summary>The eye from which all points lie within the frame, as near as can be.</summary>
    /// <param name="points">What must be seen, mm.</param>
    /// <param name="view">Direction and margin.</param>
    /// <param name="size">The picture's proportions.</param>
    public static Vec3 Eye(IReadOnlyCollection<Vec3> points, View view, PictureSize size)
    {
        var forward = view.Forward;
        var right = forward.Cross(Vec3.UnitZ).Normalised();
        var up = right.Cross(forward);
        var (across, down) = Tangents(size);
        var free = 1 - 2 * view.Margin;
        var (x, nearX) = Between(points, right, forward, across * free);
        var (y, nearY) = Between(points, up, forward, down * free);
        return right * x + up * y + forward * Math.Min(nearX, nearY);
    }

    /// <summary>A lens at an eye, sharp at a point.</summary>
    public static Lens Lens(Vec3 eye, View view, PictureSize size, Vec3 sharp)
    {
        var forward = view.Forward;
        var distance = (sharp - eye).Dot(forward);
        return new Lens(
            eye, eye + forward * distance, Vec3.UnitZ, 2 * Math.Atan(Tangents(size).Down), distance, view.OpeningShare * distance / 2);
    }

    /// <summary>Where a point falls: -1 to 1 from left to right and from bottom to top within the frame, and how far off along the view, mm.</summary>
    public static (double X, double Y, double Away) Project(Vec3 point, Vec3 eye, View view, PictureSize size)
    {
        var forward = view.Forward;
        var right = forward.Cross(Vec3.UnitZ).Normalised();
        var (across, down) = Tangents(size);
        var from = point - eye;
        var away = from.Dot(forward);
        return (from.Dot(right) / (away * across), from.Dot(right.Cross(forward)) / (away * down), away);
    }

    private static (double Middle, double Near) Between(IReadOnlyCollection<Vec3> points, Vec3 side, Vec3 forward, double tangent)
    {
        double high = double.NegativeInfinity, low = double.NegativeInfinity;
        foreach (var point in points)
        {
            double along = point.Dot(side), inset = tangent * point.Dot(forward);
            (high, low) = (Math.Max(high, along - inset), Math.Max(low, -along - inset));
        }

        return ((high - low) / 2, -(high + low) / (2 * tangent));
    }
}
