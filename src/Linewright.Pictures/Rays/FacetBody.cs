using Linewright.Solids.Polyhedra;
using Linewright.Solids.Space;

namespace Linewright.Pictures.Rays;

/// <summary>A convex body as planes side by side for the vector unit: all x, all y, all z, all offsets.</summary>
/// <remarks>
/// Padded to a multiple of 16 with planes that no ray crosses. The frame is moved so that the middle of the body is the
/// origin: single precision is then good to 1e-7 of its size, whatever the scene is. Where a girdle of many upright facets
/// goes round the z axis, as a brilliant's does, they come last: a ray that leaves by another facet inside the cylinder that touches
/// them from within cannot have met one, so they are looked at only by the few rays that head for the girdle.
/// </remarks>
internal sealed class FacetBody
{
    internal const int Lanes = 16;

    /// <summary>Largest z of an upright facet's normal. Calculated: over a stone of 10 mm the plane then moves by 1e-5 mm.</summary>
    private const double Upright = 1e-6;

    /// <summary>A girdle is round where its widest facet lies at most this much farther out than its nearest; others would be asked for too often. Assumed.</summary>
    private const double Round = 1.1;

    public FacetBody(ConvexPolyhedron body)
    {
        var box = body.Bounds;
        Middle = (box.Low + box.High) * 0.5;
        Count = body.Faces.Length;
        Padded = Whole(Count);
        Core = Padded;
        var planes = body.Faces.Select(face => (face.Plane.Normal, Offset: -face.Plane.Distance(Middle))).ToList();
        var girdle = planes.Where(plane => Math.Abs(plane.Normal.Z) < Upright).ToList();
        if (girdle.Count > 0 && Whole(Count - girdle.Count) < Padded)
        {
            double near = girdle.Min(plane => plane.Offset), wide = girdle.Max(plane => plane.Offset);
            if (near > 0 && wide < Round * near)
            {
                planes = [.. planes.Except(girdle), .. girdle];
                Core = Whole(Count - girdle.Count);

                // A hair narrower than it is, against rounding.
                Within = (float)(near * near * (1 - 1e-5));
            }
        }

        Numbers = new float[5 * Padded];
        for (var i = 0; i < Padded; i++)
        {
            var (normal, offset) = i < Count ? planes[i] : (default, 1);
            Numbers[i] = (float)normal.X;
            Numbers[Padded + i] = (float)normal.Y;
            Numbers[2 * Padded + i] = (float)normal.Z;
            Numbers[3 * Padded + i] = (float)offset;
            Numbers[4 * Padded + i] = BitConverter.Int32BitsToSingle(i);
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

    /// <summary>Planes that every ray is held against, with those that fill up their last 16.</summary>
    public int Core { get; }

    /// <summary>Square of the radius about the z axis within which the other planes cannot lie, mm2; 0 where there are none.</summary>
    public float Within { get; }

    /// <summary>5 x <see cref="Padded"/> numbers: x, y, z, offsets, and each plane's own number as an integer's bits.</summary>
    public float[] Numbers { get; }

    /// <summary>The planes for tracing, at a place where <see cref="Numbers"/> lie still.</summary>
    public unsafe FacetPlanes At(float* numbers) => new() { Numbers = numbers, Padded = Padded, Core = Core, Within = Within, Radius = Radius };

    private static int Whole(int count) => (count + Lanes - 1) / Lanes * Lanes;
}
