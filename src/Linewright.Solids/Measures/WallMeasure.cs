using Linewright.Solids.Meshing;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Measures;

/// <summary>How thin a body gets: the largest ball that fits inside at each point of its surface.</summary>
/// <remarks>
/// A ball of radius r about p - r n fits where the distance there is -r. It is a wall where the surface met on the
/// far side faces the other way within the widest wedge, else an edge or a corner, which is no wall: every sharp edge
/// would read zero. An edge sharper than the widest wedge is a wall that runs out, and reads zero: where feather edges
/// do not interest, take a smaller wedge. Within a union the distance is understated where parts overlap; where the ball is stopped by a
/// surface that lies inside the body, the way straight through is measured instead. Walls narrower than the
/// spacing across, and the last half spacing before a knife edge, may be missed. Thicknesses are good to 0.005 mm.
/// </remarks>
public static class WallMeasure
{
    /// <summary>Distance between samples where none is given, mm: a quarter of the thinnest thing that casts.</summary>
    public const double UsualSpacingMm = 0.05;

    /// <summary>Angle between two sides up to which they count as the two sides of a wall, radians: 45 degrees.</summary>
    public const double UsualWedge = Math.PI / 4;

    /// <summary>The thinnest wall.</summary>
    /// <param name="solid">The body.</param>
    /// <param name="surface">A mesh of it, simplified or not; samples are moved from it onto the true surface.</param>
    /// <param name="upTo">Walls of this thickness or more do not interest, mm; the smaller, the faster.</param>
    /// <param name="where">Which part of the surface is looked at; all where null.</param>
    /// <param name="spacing">Distance between samples, mm.</param>
    /// <param name="widestWedge">Largest angle between the two sides of a wall, radians, 0.01 to 1.5.</param>
    /// <returns>The thinnest sample, or null where everything is at least <paramref name="upTo"/> thick.</returns>
    public static WallSample? Thinnest(
        Solid solid, Mesh surface, double upTo, Func<Vec3, bool>? where = null, double spacing = UsualSpacingMm,
        double widestWedge = UsualWedge)
    {
        WallSample? thinnest = null;
        foreach (var sample in Below(solid, surface, upTo, where, spacing, widestWedge))
        {
            if (thinnest is not { } known || sample.ThicknessMm < known.ThicknessMm)
            {
                thinnest = sample;
            }
        }

        return thinnest;
    }

    /// <summary>The thinnest wall under each label, so that each feature can have its own limit.</summary>
    /// <param name="solid">The body.</param>
    /// <param name="surface">A mesh of it.</param>
    /// <param name="upTo">Walls of this thickness or more do not interest, mm.</param>
    /// <param name="label">Names the feature that a point of the surface belongs to; points with a negative label are left out.</param>
    /// <param name="spacing">Distance between samples, mm.</param>
    /// <param name="widestWedge">Largest angle between the two sides of a wall, radians, 0.01 to 1.5.</param>
    /// <returns>Labels in rising order, only those with a wall thinner than <paramref name="upTo"/>.</returns>
    public static SortedDictionary<int, WallSample> ThinnestByLabel(
        Solid solid, Mesh surface, double upTo, Func<Vec3, int> label, double spacing = UsualSpacingMm,
        double widestWedge = UsualWedge)
    {
        ArgumentNullException.ThrowIfNull(label);
        var thinnest = new SortedDictionary<int, WallSample>();
        foreach (var sample in Below(solid, surface, upTo, p => label(p) >= 0, spacing, widestWedge))
        {
            var of = label(sample.At);
            if (of >= 0 && (!thinnest.TryGetValue(of, out var known) || sample.ThicknessMm < known.ThicknessMm))
            {
                thinnest[of] = sample;
            }
        }

        return thinnest;
    }

    /// <summary>Every sample of the surface where the body is thinner than a limit, in the order of the surface.</summary>
    /// <param name="solid">The body.</param>
    /// <param name="surface">A mesh of it.</param>
    /// <param name="limit">Thickness below which a sample is returned, mm.</param>
    /// <param name="where">Which part of the surface is looked at; all where null.</param>
    /// <param name="spacing">Distance between samples, mm.</param>
    /// <param name="widestWedge">Largest angle between the two sides of a wall, radians, 0.01 to 1.5.</param>
    public static IReadOnlyList<WallSample> Below(
        Solid solid, Mesh surface, double limit, Func<Vec3, bool>? where = null, double spacing = UsualSpacingMm,
        double widestWedge = UsualWedge)
    {
        ArgumentNullException.ThrowIfNull(solid);
        ArgumentNullException.ThrowIfNull(surface);
        return new WallProbe(solid, surface, Guard.Positive(limit), spacing, Guard.InRange(widestWedge, 0.01, 1.5), where).Run();
    }
}
