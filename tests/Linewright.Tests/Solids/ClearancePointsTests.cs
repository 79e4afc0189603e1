using CsCheck;
using Linewright.Solids.Measures;
using Linewright.Solids.Meshing;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Tests.Solids;

/// <summary>Where a distance is understated, past the edges of cuts and common parts, the points of a gap must still lie on metal.</summary>
public class ClearancePointsTests
{
    // The judge is a mesh, which knows nothing of distances. Within 5 um it falls short of an edge of 30 degrees by
    // 5 / sin 15 = 19 um.
    private const double OnMetalMm = 0.02;

    // How much wider than the nearest two probes a gap may be given: what is not worth a search, and rounding.
    private const double CrossingMm = 1.1e-3;

    /// <summary>Bodies whose outside distance is understated past their edges: the blunter the understatement, the sharper the edge.</summary>
    private static readonly Dictionary<string, Solid> Cut = new()
    {
        ["plate with a window"] = Shape.Box(2.4, 2, 0.8).Minus(Shape.Box(1, 1.2, 2).Moved(0.6, 0, 0)),
        ["knife of 30 degrees"] = Solid.Common(
            Shape.HalfSpace(Vec3.Zero, new Vec3(-Math.Sin(Math.PI / 12), 0, Math.Cos(Math.PI / 12))),
            Shape.HalfSpace(Vec3.Zero, new Vec3(-Math.Sin(Math.PI / 12), 0, -Math.Cos(Math.PI / 12))),
            Shape.Box(4, 1.6, 4).Moved(2, 0, 0), Shape.HalfSpace(new Vec3(2, 0, 0), Vec3.UnitX)),
        ["ring cut by a plane"] = Shape.Torus(1.1, 0.35).Minus(Shape.Box(2, 4, 2).Moved(1.3, 0, 0)),
        ["bored ball"] = Shape.Ball(1).Minus(Shape.Cylinder(0.6, 4)),
        ["lens"] = Solid.Common(Shape.Ball(1.5).Moved(0, 0, 1.1), Shape.Ball(1.5).Moved(0, 0, -1.1)),
    };

    public static TheoryData<string, string> Pairs
    {
        get
        {
            var pairs = new TheoryData<string, string>();
            var names = Cut.Keys.ToArray();
            for (var i = 0; i < names.Length; i++)
            {
                pairs.Add(names[i], names[(i + 1) % names.Length]);
                pairs.Add(names[i], names[i]);
            }

            return pairs;
        }
    }

    [Theory]
    [MemberData(nameof(Pairs))]
    public void The_points_of_a_gap_lie_on_both_bodies_at_their_edges_too(string nameA, string nameB)
    {
        var (a, meshA) = Felt(nameA);
        var (b, meshB) = Felt(nameB);
        var number = Gen.Double[-1, 1];
        Gen.Select(number, number, number, Gen.Double[-3, 3], Gen.Double[0, 0.4]).Sample((x, y, z, angle, apart) =>
        {
            // Slide b along a direction until its probes are about as far apart as asked.
            var direction = new Vec3(x, y, z + 1.01).Normalised();
            var pose = Pose.Turn(new Vec3(y, 1.01, x), angle).Then(Pose.Move(direction * 4));
            pose = pose.Then(Pose.Move(direction * (apart - Clearance.Between([a], Pose.Identity, [b], pose).GapMm)));
            var found = Clearance.Between([a], Pose.Identity, [b], pose);
            double offA = ToMesh(meshA, found.AtA), offB = ToMesh(meshB, pose.Inverse().Point(found.AtB));
            if (found.GapMm > 0)
            {
                Assert.InRange(Math.Max(offA, offB), 0, OnMetalMm);
                Assert.Equal(found.GapMm, (found.AtA - found.AtB).Length, 1e-9);
                Assert.InRange(found.GapMm, 0, Nearest(a.Probes, b.Probes, pose) + CrossingMm);
            }
            else
            {
                // The point that lies in the other body is one of a surface.
                Assert.InRange(Math.Min(offA, offB), 0, OnMetalMm);
            }
        }, iter: 12, threads: 1);
    }

    private static (Body Body, Mesh Mesh) Felt(string name)
    {
        var mesh = Mesher.Run(Cut[name], new MeshSettings(0.04, 0.005, true), threads: 1, stop: TestContext.Current.CancellationToken).Mesh;
        Assert.NotEqual(0, mesh.TriangleCount);
        return (new Body(name, Cut[name], ProbeSurface.Of(Cut[name], mesh, 0.1)), mesh);
    }

    /// <summary>The nearest two probes: no gap is wider.</summary>
    private static double Nearest(ProbeSurface a, ProbeSurface b, Pose pose)
    {
        var placed = Enumerable.Range(0, b.Count).Select(i => pose.Point(b.Point(i))).ToArray();
        return Enumerable.Range(0, a.Count).Min(i => placed.Min(p => (p - a.Point(i)).Length));
    }

    private static double ToMesh(Mesh mesh, Vec3 p)
    {
        var least = double.PositiveInfinity;
        for (var t = 0; t < mesh.TriangleCount; t++)
        {
            least = Math.Min(least, ToTriangle(p, mesh.Vertex(mesh.Triangles[3 * t]), mesh.Vertex(mesh.Triangles[3 * t + 1]), mesh.Vertex(mesh.Triangles[3 * t + 2])));
        }

        return least;
    }

    private static double ToTriangle(Vec3 p, Vec3 a, Vec3 b, Vec3 c)
    {
        var across = (b - a).Cross(c - a);
        if (across.Length > 0 && IsLeft(a, b) && IsLeft(b, c) && IsLeft(c, a))
        {
            return Math.Abs((p - a).Dot(across) / across.Length);
        }

        return Math.Min(ToSide(a, b), Math.Min(ToSide(b, c), ToSide(c, a)));

        bool IsLeft(Vec3 from, Vec3 to) => across.Cross(to - from).Dot(p - from) >= 0;

        double ToSide(Vec3 from, Vec3 to)
        {
            var way = to - from;
            var part = way.Dot(way) > 0 ? Math.Clamp((p - from).Dot(way) / way.Dot(way), 0, 1) : 0;
            return (p - from - way * part).Length;
        }
    }
}
