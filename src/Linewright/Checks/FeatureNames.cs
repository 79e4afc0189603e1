using Linewright.Parts;
using Linewright.Solids.Space;

namespace Linewright.Checks;

/// <summary>Which feature of a part a point belongs to: the one whose own body is nearest.</summary>
internal static class FeatureNames
{
    /// <summary>Index of the feature at a point; -1 where the part has none.</summary>
    public static int IndexAt(Part part, Vec3 at)
    {
        var (nearest, least) = (-1, double.PositiveInfinity);
        for (var i = 0; i < part.Features.Length; i++)
        {
            var distance = part.Features[i].Solid.Distance(at);
            if (distance < least)
            {
                (nearest, least) = (i, distance);
            }
        }

        return nearest;
    }

    /// <summary>The feature's name; the part's own where it has no features.</summary>
    public static string At(Part part, Vec3 at) => IndexAt(part, at) is >= 0 and var i ? part.Features[i].Name : part.Name;

    /// <summary>Part, feature and place: "link: eye at (1.20, 0.00, 0.43)".</summary>
    public static string Place(Part part, int feature, Vec3 at)
        => FormattableString.Invariant($"{part.Name}: {part.Features[feature].Name} at ({at.X:0.00}, {at.Y:0.00}, {at.Z:0.00})");
}
