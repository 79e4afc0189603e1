using Linewright.Solids.Polyhedra;
using Linewright.Solids.Space;

namespace Linewright.Pictures.Rays;

/// <summary>A convex body as planes side by side for the vector unit: all x, all y, all z, all offsets.</summary>
/// <remarks>
/// Padded to a multiple of 16 with planes that no ray crosses. The frame is moved so that the middle of the body is the
/// origin: single precision is then good to 1e-7 of its size, whatever the scene is.
/// </remarks>
internal sealed class FacetBody
{
    internal const int Lanes = 16;

    public FacetBody(ConvexPolyhedron body)
    {
        var box = body.Bounds;
        Middle = (box.Low + box.High) * 0.5;
        Count = body.Faces.Length;
        Padded = (Count + Lanes - 1) / Lanes * Lanes;
        Numbers = new float[4 * Padded];
        for (var i = 0; i < Padded; i++)
        {
            var plane = i < Count ? body.Faces[i].Plane : default;
            Numbers[i] = (float)plane.Normal.X;
            Numbers[Padded + i] = (float)plane.Normal.Y;
            Numbers[2 * Padded + i] = (float)plane.Normal.Z;
            Numbers[3 * Padded + i] = i < Count ? (float)-plane.Distance(Middle) : 1;
        }

        Radius = (float)(body.Vertices.Max(v => (v - Middle).Length) * (1 + 1e-6));
    }

    /// <summary>Where the body's own origin for tracing stands in its frame, mm.</summary>
    public Vec3 Middle { get; }

    /// <summary>Of the sphere about <see cref="Middle"/> that holds it, mm.</summary>
    public float Radius { get; }

    /// <summary>Planes.</summary>
    public int Count { get; }

    /// <summary>Planes with padding.</summary>
    public int Padded { get; }

    /// <summary>4 x <see cref="Padded"/> numbers.</summary>
    public float[] Numbers { get; }
}
