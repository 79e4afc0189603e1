using Linewright.Solids.Space;

namespace Linewright.Pictures.Rays;

/// <summary>From the scene's frame into a thing's own: three rows of a rotation (or mirror) and where its origin stands.</summary>
internal struct Turn(Pose place)
{
    public Float3 RowX = new(place.AxisX);
    public Float3 RowY = new(place.AxisY);
    public Float3 RowZ = new(place.AxisZ);
    public Float3 Origin = new(place.Origin);

    /// <summary>A direction of the scene, in the thing's frame.</summary>
    public readonly Float3 Inwards(Float3 v) => new(Float3.Dot(RowX, v), Float3.Dot(RowY, v), Float3.Dot(RowZ, v));

    /// <summary>A point of the scene, in the thing's frame.</summary>
    public readonly Float3 PointInwards(Float3 p) => Inwards(p - Origin);

    /// <summary>A direction of the thing, in the scene's frame.</summary>
    public readonly Float3 Outwards(Float3 v) => RowX * v.X + RowY * v.Y + RowZ * v.Z;

    /// <summary>A point of the thing, in the scene's frame.</summary>
    public readonly Float3 PointOutwards(Float3 p) => Outwards(p) + Origin;
}
