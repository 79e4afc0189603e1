using System.Runtime.CompilerServices;

namespace Linewright.Solids.Meshing;

/// <summary>The point closest to a set of tangent planes in the least squares, drawn a little towards a start.</summary>
/// <remarks>
/// The draw is one hundredth of the planes' trace: enough to hold the point in a flat region, little enough that a
/// corner comes out within a hundredth of the start's error, a round. Three rounds from closer samples make it exact.
/// Source: T. Ju et al. (2002), Dual contouring of Hermite data, SIGGRAPH (the least-squares vertex).
/// </remarks>
internal struct PlaneFit(float startX, float startY, float startZ)
{
    private const float Draw = 0.01f;

    // A gradient shorter than this carries no direction: the middle of a ball.
    private const float LeastGradientSquared = 1e-6f;
    private float xx, xy, xz, yy, yz, zz, bx, by, bz;

    /// <summary>Adds the plane where the distance, going on along its gradient, would be zero.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Add(float px, float py, float pz, float distance, float nx, float ny, float nz)
    {
        var length = nx * nx + ny * ny + nz * nz;
        if (!(length > LeastGradientSquared))
        {
            return;
        }

        var off = nx * (px - startX) + ny * (py - startY) + nz * (pz - startZ) - distance;
        var weight = 1 / length;
        float wx = weight * nx, wy = weight * ny, wz = weight * nz;
        xx += wx * nx;
        xy += wx * ny;
        xz += wx * nz;
        yy += wy * ny;
        yz += wy * nz;
        zz += wz * nz;
        bx += wx * off;
        by += wy * off;
        bz += wz * off;
    }

    /// <summary>The point.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly void Solve(out float x, out float y, out float z)
    {
        var draw = Draw * (xx + yy + zz) + 1e-9f;
        float a = xx + draw, b = yy + draw, c = zz + draw;
        float m00 = b * c - yz * yz, m01 = xz * yz - xy * c, m02 = xy * yz - xz * b;
        float m12 = xy * xz - a * yz, scale = 1 / (a * m00 + xy * m01 + xz * m02);
        x = startX + scale * (m00 * bx + m01 * by + m02 * bz);
        y = startY + scale * (m01 * bx + (a * c - xz * xz) * by + m12 * bz);
        z = startZ + scale * (m02 * bx + m12 * by + (a * b - xy * xy) * bz);
    }
}
