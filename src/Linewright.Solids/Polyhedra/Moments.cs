using System.Collections.Immutable;
using Linewright.Solids.Space;

namespace Linewright.Solids.Polyhedra;

/// <summary>Volume (mm3), centre (mm) and inertia (mm5, unit density) of a filled convex body.</summary>
internal readonly record struct Moments(double Volume, Vec3 Centroid, InertiaTensor Inertia)
{
    /// <summary>Sums tetrahedra from one inner point to every face.</summary>
    public static Moments Of(ImmutableArray<Vec3> vertices, ImmutableArray<Face> faces)
    {
        // A point inside as origin keeps every tetrahedron positive and the sums free of cancellation.
        var inner = vertices.Aggregate(Vec3.Zero, (a, b) => a + b) / vertices.Length;
        double sixVolumes = 0, xx = 0, yy = 0, zz = 0, xy = 0, xz = 0, yz = 0;
        var first = Vec3.Zero;
        foreach (var face in faces)
        {
            var a = vertices[face.Loop[0]] - inner;
            for (var i = 2; i < face.Loop.Length; i++)
            {
                Vec3 b = vertices[face.Loop[i - 1]] - inner, c = vertices[face.Loop[i]] - inner;
                var six = a.Dot(b.Cross(c));
                var sum = a + b + c;
                sixVolumes += six;
                first += sum * six;

                // Source: moments of a tetrahedron with one corner in the origin, Tonon (2004), J. Math. Stat. 1(1).
                xx += six * (a.X * a.X + b.X * b.X + c.X * c.X + sum.X * sum.X);
                yy += six * (a.Y * a.Y + b.Y * b.Y + c.Y * c.Y + sum.Y * sum.Y);
                zz += six * (a.Z * a.Z + b.Z * b.Z + c.Z * c.Z + sum.Z * sum.Z);
                xy += six * (a.X * a.Y + b.X * b.Y + c.X * c.Y + sum.X * sum.Y);
                xz += six * (a.X * a.Z + b.X * b.Z + c.X * c.Z + sum.X * sum.Z);
                yz += six * (a.Y * a.Z + b.Y * b.Z + c.Y * c.Z + sum.Y * sum.Z);
            }
        }

        // Moments about the centroid: take off the volume at the centroid's arm.
        var volume = sixVolumes / 6;
        var arm = first / (4 * sixVolumes);
        double Central(double sum, double u, double v) => sum / 120 - volume * u * v;
        double x = Central(xx, arm.X, arm.X), y = Central(yy, arm.Y, arm.Y), z = Central(zz, arm.Z, arm.Z);
        var inertia = new InertiaTensor(
            y + z, x + z, x + y,
            -Central(xy, arm.X, arm.Y), -Central(xz, arm.X, arm.Z), -Central(yz, arm.Y, arm.Z));
        return new Moments(volume, inner + arm, inertia);
    }
}
