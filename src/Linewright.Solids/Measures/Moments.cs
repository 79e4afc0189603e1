using Linewright.Solids.Space;

namespace Linewright.Solids.Measures;

/// <summary>Running sums of volume, first and second moments about a reference point.</summary>
internal struct Moments(Vec3 reference)
{
    private double area, volume, x, y, z, xx, yy, zz, xy, yz, zx;

    /// <summary>Adds the signed tetrahedron between the reference point and a triangle.</summary>
    public void AddTriangle(Vec3 a, Vec3 b, Vec3 c)
    {
        area += (b - a).Cross(c - a).Length / 2;
        a -= reference;
        b -= reference;
        c -= reference;
        var six = a.Dot(b.Cross(c));
        var s = a + b + c;
        volume += six / 6;
        First(s, six / 24);
        Second(s, six / 120);
        Second(a, six / 120);
        Second(b, six / 120);
        Second(c, six / 120);
    }

    /// <summary>Adds a small volume at a point.</summary>
    public void AddPoint(Vec3 at, double size)
    {
        volume += size;
        First(at - reference, size);
        Second(at - reference, size);
    }

    /// <summary>Refers the sums to the centroid.</summary>
    public readonly MassProperties Finish()
    {
        if (volume == 0)
        {
            return new MassProperties(0, area, reference, default);
        }

        // Steiner: a moment about the centroid is the one about the reference less volume times offset squared.
        var c = new Vec3(x, y, z) / volume;
        double sx = xx - volume * c.X * c.X, sy = yy - volume * c.Y * c.Y, sz = zz - volume * c.Z * c.Z;
        return new MassProperties(
            volume,
            area,
            reference + c,
            new Inertia(sy + sz, sz + sx, sx + sy, volume * c.X * c.Y - xy, volume * c.Y * c.Z - yz, volume * c.Z * c.X - zx));
    }

    private void First(Vec3 p, double by)
    {
        x += p.X * by;
        y += p.Y * by;
        z += p.Z * by;
    }

    private void Second(Vec3 p, double by)
    {
        xx += p.X * p.X * by;
        yy += p.Y * p.Y * by;
        zz += p.Z * p.Z * by;
        xy += p.X * p.Y * by;
        yz += p.Y * p.Z * by;
        zx += p.Z * p.X * by;
    }
}
