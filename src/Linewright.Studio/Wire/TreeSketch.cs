using System.Text.Json.Nodes;
using Linewright.Casting;
using Linewright.Solids.Outlines;
using Linewright.Solids.Space;

namespace Linewright.Studio.Wire;

/// <summary>A tree from the side: the box of every sprue and of every part on it, as they hang, the farthest first. mm; x across, y up from the button's flat.</summary>
/// <remarks>Boxes are larger than what they hold. Each is drawn as its outline, corner after corner.</remarks>
internal static class TreeSketch
{
    private const int Decimals = 2;

    /// <summary>The outlines of one tree.</summary>
    public static JsonArray Of(CastingPlan plan, CastingTree tree)
    {
        // The eye is in front of the tree, at -y: what has the largest y is drawn first.
        var boxes = tree.Places.SelectMany(place => new[] { plan.Parts[place.Part].SprueBox, plan.Parts[place.Part].PartBox }.Select(box => Corners(box).Select(place.Pose.Point).ToList()))
            .OrderByDescending(corners => corners.Average(corner => corner.Y));
        return [.. boxes.Select(corners => new JsonArray([.. Around([.. corners.Select(corner => new FlatPoint(corner.X, corner.Z))]).SelectMany(point => (JsonNode[])[Short(point.X), Short(point.Y)])]))];
    }

    private static IEnumerable<Vec3> Corners(Bounds box)
        => Enumerable.Range(0, 8).Select(corner => new Vec3((corner & 1) == 0 ? box.Low.X : box.High.X, (corner & 2) == 0 ? box.Low.Y : box.High.Y, (corner & 4) == 0 ? box.Low.Z : box.High.Z));

    // The rubber band about some points. Source: Andrew (1979), Inf. Process. Lett. 9, 216, two chains of points in order.
    private static List<FlatPoint> Around(List<FlatPoint> points)
    {
        var sorted = points.OrderBy(point => point.X).ThenBy(point => point.Y).ToList();
        var band = new List<FlatPoint>();
        foreach (var chain in new[] { sorted, [.. Enumerable.Reverse(sorted)] })
        {
            var start = band.Count;
            foreach (var point in chain)
            {
                while (band.Count - start >= 2 && (band[^1] - band[^2]).Cross(point - band[^1]) <= 0)
                {
                    band.RemoveAt(band.Count - 1);
                }

                band.Add(point);
            }

            band.RemoveAt(band.Count - 1);
        }

        return band;
    }

    private static double Short(double mm) => Math.Round(mm, Decimals, MidpointRounding.ToEven);
}
