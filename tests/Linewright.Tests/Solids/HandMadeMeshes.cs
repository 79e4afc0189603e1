using Linewright.Solids.Meshing;
using Linewright.Solids.Space;

namespace Linewright.Tests.Solids;

/// <summary>Meshes written down by formula, so that measures are tested without a mesher.</summary>
internal static class HandMadeMeshes
{
    /// <summary>Twelve triangles.</summary>
    public static Mesh Box(double sizeX, double sizeY, double sizeZ)
    {
        var positions = new float[24];
        for (var i = 0; i < 8; i++)
        {
            positions[i * 3] = (float)((i & 1) == 0 ? -sizeX / 2 : sizeX / 2);
            positions[i * 3 + 1] = (float)((i & 2) == 0 ? -sizeY / 2 : sizeY / 2);
            positions[i * 3 + 2] = (float)((i & 4) == 0 ? -sizeZ / 2 : sizeZ / 2);
        }

        return new Mesh(positions, [
            0, 2, 3, 0, 3, 1, // below
            4, 5, 7, 4, 7, 6, // above
            0, 1, 5, 0, 5, 4, // front
            2, 6, 7, 2, 7, 3, // back
            0, 4, 6, 0, 6, 2, // left
            1, 3, 7, 1, 7, 5, // right
        ]);
    }

    /// <summary>A ball as a grid of longitudes and latitudes, its poles closed by fans.</summary>
    public static Mesh Ball(double radius, int steps) => Revolved(
        steps * 2, steps, closed: false, k => (radius * Math.Sin(Math.PI * k / steps), -radius * Math.Cos(Math.PI * k / steps)));

    /// <summary>A ring of round wire about z as a grid.</summary>
    public static Mesh Torus(double ring, double wire, int around, int across) => Revolved(
        around, across, closed: true, k => (ring + wire * Math.Cos(2 * Math.PI * k / across), wire * Math.Sin(2 * Math.PI * k / across)));

    /// <summary>A cylinder or frustum or cone about z from 0 to its height.</summary>
    public static Mesh Frustum(double foot, double tip, double height, int around) => Revolved(
        around, 3, closed: false, k => k switch { 0 => (0, 0), 1 => (foot, 0), 2 => (tip, height), _ => (0, height) });

    /// <summary>A tube about z.</summary>
    public static Mesh Tube(double outer, double inner, double height, int around) => Revolved(
        around, 4, closed: true, k => k switch { 0 => (outer, 0), 1 => (outer, height), 2 => (inner, height), _ => (inner, 0) });

    /// <summary>Turns a profile of (radius, height), given so that outside lies to its right, about z.</summary>
    private static Mesh Revolved(int around, int steps, bool closed, Func<int, (double Radius, double Height)> profile)
    {
        var rows = closed ? steps : steps + 1;
        var positions = new List<float>();
        var starts = new int[rows + 1];
        for (var k = 0; k < rows; k++)
        {
            starts[k] = positions.Count / 3;
            var (r, h) = profile(k);
            var count = r < 1e-9 ? 1 : around;
            for (var i = 0; i < count; i++)
            {
                var turn = 2 * Math.PI * i / around;
                positions.AddRange([(float)(r * Math.Cos(turn)), (float)(r * Math.Sin(turn)), (float)h]);
            }
        }

        starts[rows] = positions.Count / 3;
        var triangles = new List<int>();
        for (var k = 0; k < steps; k++)
        {
            for (var i = 0; i < around; i++)
            {
                int a = At(k, i), b = At(k, i + 1), c = At(k + 1, i), d = At(k + 1, i + 1);
                Add(a, b, d);
                Add(a, d, c);
            }
        }

        return new Mesh([.. positions], [.. triangles]);

        int At(int k, int i)
        {
            var row = k % rows;
            return starts[row] + i % (starts[row + 1] - starts[row]);
        }

        void Add(int a, int b, int c)
        {
            if (a != b && b != c && c != a)
            {
                triangles.AddRange([a, b, c]);
            }
        }
    }

    /// <summary>A mesh with its vertices turned and moved, for tests that no axis is special.</summary>
    public static Pose Awry { get; } = Pose.TurnAbout(new Vec3(1, 2, 3), new Vec3(1, -2, 0.5), 0.7);
}
