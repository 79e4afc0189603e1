using System.Numerics;
using CsCheck;
using Linewright.Solids.Meshing;
using Linewright.Solids.Space;

namespace Linewright.Tests.Solids;

public class IntersectionTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private static readonly float[] Lone = [0, 0, 0, 4, 0, 0, 0, 4, 0];

    [Theory]
    [InlineData("1 1 -1  1 1 1  2 1 3", true)] // pierces
    [InlineData("1 1 0.5  1 1 1  2 1 3", false)] // above
    [InlineData("1 1 0  1 1 1  2 1 3", true)] // touches the inside with a corner
    [InlineData("2 0 0  2 0 1  2 -1 1", true)] // touches an edge with a corner
    [InlineData("3 3 -1  3 3 1  3 4 1", false)] // passes beside
    [InlineData("1 1 0  2 1 0  1 1.5 0", true)] // lies within, in the plane
    [InlineData("-1 -1 0  9 -1 0  -1 9 0", true)] // lies round it, in the plane
    [InlineData("-1 2 0  3 -1 0  -1 -1 0", true)] // overlaps in the plane
    [InlineData("5 0 0  5 4 0  9 0 0", false)] // beside in the plane
    [InlineData("4 0 0  8 0 0  8 4 0", true)] // touches at a corner that is not shared
    public void Two_lone_triangles_meet_or_not(string corners, bool meets)
    {
        var other = corners.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(word => float.Parse(word, System.Globalization.CultureInfo.InvariantCulture));
        var mesh = new Mesh([.. Lone, .. other], [0, 1, 2, 3, 4, 5]);
        Assert.Equal(meets, MeshIntersections.Find(mesh, stop: Stop).Count == 1);
    }

    [Theory]
    [InlineData(5, 1, 1, 5, 2, 2, false)] // opens away
    [InlineData(1, 1, 0, 2, 1, 1, true)] // a side lies within
    [InlineData(1, 1, -1, 1, 1, 1, true)] // its far side pierces
    [InlineData(8, 0, 0, 8, -2, 0, true)] // runs on along an edge
    [InlineData(3, -1, 0, 0, -3, 0, false)] // in the plane, the other way
    [InlineData(9, 9, 0, 9, 9, 3, true)] // is pierced by the far side
    public void Triangles_with_a_common_vertex_meet_or_not(float x1, float y1, float z1, float x2, float y2, float z2, bool meets)
    {
        var mesh = new Mesh([.. Lone, x1, y1, z1, x2, y2, z2], [0, 1, 2, 0, 3, 4]);
        Assert.Equal(meets, MeshIntersections.Find(mesh, stop: Stop).Count == 1);
    }

    [Fact]
    public void Triangles_with_a_common_edge_meet_just_when_folded_flat()
    {
        Assert.Single(MeshIntersections.Find(new Mesh([.. Lone, 1, 1, 0], [0, 1, 2, 1, 0, 3]), stop: Stop));
        Assert.Empty(MeshIntersections.Find(new Mesh([.. Lone, 1, -1, 0], [0, 1, 2, 1, 0, 3]), stop: Stop));
        Assert.Empty(MeshIntersections.Find(new Mesh([.. Lone, 1, 1, 1e-6f], [0, 1, 2, 1, 0, 3]), stop: Stop));
    }

    [Fact]
    public void A_triangle_without_area_is_reported_with_itself()
        => Assert.Equal([(0, 0)], MeshIntersections.Find(new Mesh([0, 0, 0, 1, 1, 1, 2, 2, 2], [0, 1, 2]), stop: Stop));

    [Fact]
    public void Sound_meshes_are_clean_and_two_of_them_crossed_are_not()
    {
        Assert.Empty(MeshIntersections.Find(HandMadeMeshes.Box(2, 3, 4), stop: Stop));
        Assert.Empty(MeshIntersections.Find(HandMadeMeshes.Ball(1, 40), stop: Stop));
        Assert.Empty(MeshIntersections.Find(HandMadeMeshes.Torus(2, 0.5, 60, 20), stop: Stop));
        Mesh a = HandMadeMeshes.Ball(1, 40), b = a.Moved(Pose.Move(0.9, 0.1, 0));
        var both = new Mesh([.. a.Positions, .. b.Positions], [.. a.Triangles, .. b.Triangles.ToArray().Select(v => v + a.VertexCount)]);
        var pairs = MeshIntersections.Find(both, stop: Stop);
        Assert.NotEmpty(pairs);
        Assert.All(pairs, pair => Assert.True(pair.First < a.TriangleCount && pair.Second >= a.TriangleCount));
        Assert.Equal(7, MeshIntersections.Find(both, 7, stop: Stop).Count);
    }

    [Fact]
    public void Random_triangles_meet_where_their_intervals_overlap_on_the_line_of_their_planes()
    {
        var random = new Random(20261125);
        var meetings = 0;
        for (var i = 0; i < 3000; i++)
        {
            var corners = Enumerable.Range(0, 18).Select(_ => (float)(4 * random.NextDouble() - 2)).ToArray();
            var mesh = new Mesh(corners, [0, 1, 2, 3, 4, 5]);
            var meets = MeshIntersections.Find(mesh, stop: Stop).Count > 0;
            Assert.Equal(MeetByIntervals(mesh), meets);
            meetings += meets ? 1 : 0;
        }

        Assert.InRange(meetings, 200, 1500);
    }

    [Fact]
    public void The_side_of_a_plane_is_exact_where_rounding_would_lie()
    {
        // Whole multiples of 2^-20: the determinant in 64 whole bits is exact.
        Gen.Int[-40, 40].Array[12].Sample(n =>
        {
            Vector3 At(int i) => new(n[i * 3] / 1048576f, n[i * 3 + 1] / 1048576f, n[i * 3 + 2] / 1048576f);
            long ax = n[0] - n[9], ay = n[1] - n[10], az = n[2] - n[11], bx = n[3] - n[9], by = n[4] - n[10], bz = n[5] - n[11];
            long cx = n[6] - n[9], cy = n[7] - n[10], cz = n[8] - n[11];
            var exact = az * (bx * cy - cx * by) + bz * (cx * ay - ax * cy) + cz * (ax * by - bx * ay);
            return Orientation.Side(At(0), At(1), At(2), At(3)) == Math.Sign(exact);
        }, iter: 2000);

        // Nearly in one plane: one unit in the last place decides.
        Vector3 a = new(1, 1, 1), b = new(3, 1.5f, 2), c = new(1.25f, 4, 2.5f), on = new(a.X + (b.X - a.X) / 4 + (c.X - a.X) / 2, a.Y + (b.Y - a.Y) / 4 + (c.Y - a.Y) / 2, a.Z + (b.Z - a.Z) / 4 + (c.Z - a.Z) / 2);
        Assert.Equal(0, Orientation.Side(a, b, c, on));
        int above = Orientation.Side(a, b, c, on with { Z = MathF.BitIncrement(on.Z) }), below = Orientation.Side(a, b, c, on with { Z = MathF.BitDecrement(on.Z) });
        Assert.Equal(-1, above * below);
    }

    /// <summary>Source: T. Moeller (1997), A fast triangle-triangle intersection test, J. Graphics Tools 2 (intervals on the planes' line), in doubles.</summary>
    private static bool MeetByIntervals(Mesh mesh)
    {
        Vec3[] s = [mesh.Vertex(0), mesh.Vertex(1), mesh.Vertex(2)], t = [mesh.Vertex(3), mesh.Vertex(4), mesh.Vertex(5)];
        Vec3 ns = (s[1] - s[0]).Cross(s[2] - s[0]), nt = (t[1] - t[0]).Cross(t[2] - t[0]), line = ns.Cross(nt);
        var onS = Interval(s, nt, t[0], line);
        var onT = Interval(t, ns, s[0], line);
        return onS is var (a, b) && onT is var (c, d) && a <= d && c <= b;

        static (double Low, double High)? Interval(Vec3[] p, Vec3 normal, Vec3 origin, Vec3 line)
        {
            var cuts = new List<double>();
            for (var i = 0; i < 3; i++)
            {
                Vec3 from = p[i], to = p[(i + 1) % 3];
                double a = normal.Dot(from - origin), b = normal.Dot(to - origin);
                if (a * b < 0)
                {
                    cuts.Add(line.Dot(from + (to - from) * (a / (a - b))));
                }
            }

            return cuts.Count < 2 ? null : (cuts.Min(), cuts.Max());
        }
    }
}
