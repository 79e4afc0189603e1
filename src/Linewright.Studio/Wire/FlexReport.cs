using System.Text.Json.Nodes;
using Linewright.Checks;
using Linewright.Solids.Space;

namespace Linewright.Studio.Wire;

/// <summary>How one joint turns, for the scrubber: limits in degrees, what meets there, and the axis.</summary>
public static class FlexReport
{
    /// <summary>The motion as JSON.</summary>
    public static JsonObject Of(HingeMotion motion)
    {
        ArgumentNullException.ThrowIfNull(motion);
        return new JsonObject
        {
            ["inward"] = Limit(motion.Inward),
            ["outward"] = Limit(motion.Outward),
            ["worn_deg"] = double.RadiansToDegrees(motion.WornAngle),
            ["axis_mm"] = Point(motion.Axis),
            ["next_mm"] = Point(motion.Next.Origin),
        };
    }

    /// <summary>Places for the view.</summary>
    public static JsonArray Spots(IEnumerable<Spot> spots) => new(
    [
        .. spots.Select(spot => new JsonObject
        {
            ["role"] = MeshPacket.Role(spot.Role),
            ["at_mm"] = Point(spot.At),
            ["next"] = spot.IsNext,
            ["stone"] = spot.IsStone,
        }),
    ]);

    private static JsonObject Limit(HingeLimit limit) => new()
    {
        ["deg"] = double.RadiansToDegrees(limit.Angle),
        ["touches"] = limit.Touches,
        ["words"] = limit.Words,
        ["spots"] = Spots(limit.Spots),
    };

    private static JsonArray Point(Vec3 p) => new(p.X, p.Y, p.Z);
}
