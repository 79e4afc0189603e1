using Linewright.Pictures.Rays;

namespace Linewright.Pictures.Gpu;

/// <summary>A metal part or a stone where it stands.</summary>
internal struct CardThing
{
    public Turn Frame;

    /// <summary>Metal: root of its tree. Stone: its first plane.</summary>
    public int First;

    /// <summary>Metal: its first triangle's normals. Stone: how many planes it has.</summary>
    public int Second;

    /// <summary>Stone: of the sphere about its origin, mm.</summary>
    public float Radius;
}
