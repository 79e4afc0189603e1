using System.Runtime.CompilerServices;

namespace Linewright.Solids.Meshing;

/// <summary>Sum of squared distances to a set of planes, weighted by area, as a function of a point.</summary>
/// <remarks>Source: M. Garland and P. Heckbert (1997), Surface simplification using quadric error metrics, SIGGRAPH.</remarks>
internal struct Quadric
{
    // Draws the best point to the middle of the edge where the planes leave it free: a thousandth of their weight.
    private const double Draw = 1e-3;
    private double xx, xy, xz, yy, yz, zz, x, y, z, constant, weight;

    /// <summary>The plane of all points where normal . p + d = 0, with the area that votes for it.</summary>
    /// <remarks>A stiffness above 1 makes leaving this plane cost more, without making it larger.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Quadric OfPlane(double nx, double ny, double nz, double d, double area, double stiffness)
    {
        var w = area * stiffness;
        return new Quadric
        {
            xx = w * nx * nx,
            xy = w * nx * ny,
            xz = w * nx * nz,
            yy = w * ny * ny,
            yz = w * ny * nz,
            zz = w * nz * nz,
            x = w * nx * d,
            y = w * ny * d,
            z = w * nz * d,
            constant = w * d * d,
            weight = area,
        };
    }

    /// <summary>Adds another.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Add(in Quadric other)
    {
        xx += other.xx;
        xy += other.xy;
        xz += other.xz;
        yy += other.yy;
        yz += other.yz;
        zz += other.zz;
        x += other.x;
        y += other.y;
        z += other.z;
        constant += other.constant;
        weight += other.weight;
    }

    /// <summary>The point of least error near the middle of an edge, and the mean squared distance there.</summary>
    /// <remarks>A best point further from the middle than the edge is long is not trusted: the middle stands in.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly double Best(double mx, double my, double mz, double lengthSquared, out double px, out double py, out double pz)
    {
        var draw = Draw * (xx + yy + zz) + 1e-30;
        double a = xx + draw, b = yy + draw, c = zz + draw;
        double rx = -(xx * mx + xy * my + xz * mz + x), ry = -(xy * mx + yy * my + yz * mz + y), rz = -(xz * mx + yz * my + zz * mz + z);
        double m00 = b * c - yz * yz, m01 = xz * yz - xy * c, m02 = xy * yz - xz * b, m12 = xy * xz - a * yz;
        var scale = 1 / (a * m00 + xy * m01 + xz * m02);
        double m11 = a * c - xz * xz, m22 = a * b - xy * xy;
        double dx = scale * (m00 * rx + m01 * ry + m02 * rz), dy = scale * (m01 * rx + m11 * ry + m12 * rz), dz = scale * (m02 * rx + m12 * ry + m22 * rz);

        // A second step from there: the draw would leave a corner a thousandth of the edge's length off.
        rx = -(xx * (mx + dx) + xy * (my + dy) + xz * (mz + dz) + x);
        ry = -(xy * (mx + dx) + yy * (my + dy) + yz * (mz + dz) + y);
        rz = -(xz * (mx + dx) + yz * (my + dy) + zz * (mz + dz) + z);
        dx += scale * (m00 * rx + m01 * ry + m02 * rz);
        dy += scale * (m01 * rx + m11 * ry + m12 * rz);
        dz += scale * (m02 * rx + m12 * ry + m22 * rz);
        if (!(dx * dx + dy * dy + dz * dz <= lengthSquared))
        {
            (dx, dy, dz) = (0, 0, 0);
        }

        (px, py, pz) = (mx + dx, my + dy, mz + dz);
        return Error(px, py, pz);
    }

    /// <summary>The mean squared distance of a point to the planes.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly double Error(double px, double py, double pz)
    {
        var error = xx * px * px + yy * py * py + zz * pz * pz + 2 * (xy * px * py + xz * px * pz + yz * py * pz)
            + 2 * (x * px + y * py + z * pz) + constant;
        return weight > 0 ? Math.Max(error, 0) / weight : 0;
    }
}
