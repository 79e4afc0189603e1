using CsCheck;
using Linewright.Files;
using Linewright.Solids.Meshing;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Tests.Files;

public class CreasedNormalsTests
{
    [Fact]
    public void A_box_keeps_its_twelve_edges()
    {
        var shaded = CreasedNormals.Smooth(SampleScenes.Box(6, 3, 2));
        Assert.Equal(24, shaded.Positions.Count / 3);
        Assert.All(Points(shaded.Normals), normal => Assert.Equal(1, Math.Max(Math.Abs(normal.X), Math.Max(Math.Abs(normal.Y), Math.Abs(normal.Z))), 1e-6));
    }

    [Fact]
    public void A_fine_ring_is_round_all_over()
    {
        var mesh = SampleScenes.Ring(64, 32, 4, (_, _) => 1);
        var shaded = CreasedNormals.Smooth(mesh);
        Assert.Equal(mesh.VertexCount, shaded.Positions.Count / 3);
        foreach (var (p, normal) in Points(shaded.Positions).Zip(Points(shaded.Normals)))
        {
            // The true normal of a torus points from the middle circle to the point.
            var truth = (p - new Vec3(p.X, p.Y, 0).Normalised() * 4).Normalised();
            Assert.InRange(normal.Dot(truth), Math.Cos(2 * Math.PI / 180), 1 + 1e-6);
        }
    }

    [Theory]
    [InlineData(12, true)]  // bends of 30 degrees
    [InlineData(10, false)] // bends of 36 degrees
    public void The_crease_lies_between_thirty_and_thirty_six_degrees(int sides, bool smooth)
    {
        // A drum about z: its wall has one normal a vertex where it is smooth, two where it is not; its lids add one each.
        var shaded = CreasedNormals.Smooth(Drum(sides));
        Assert.Equal(2 * sides * (smooth ? 2 : 3) + 2, shaded.Positions.Count / 3);
    }

    [Fact]
    public void Normals_felt_on_the_solid_are_nearer_the_truth_than_those_of_its_triangles()
    {
        // A rod with ball ends, as a claw is, as coarse as a file for casting.
        var rod = Shape.Capsule(new Vec3(0, 0, 0), new Vec3(0, 0, 2), 0.4);
        var mesh = Mesher.Run(rod, new MeshSettings(0.05, 0.005, true), stop: TestContext.Current.CancellationToken).Mesh;
        double felt = Off(CreasedNormals.Of(mesh, rod)), flat = Off(CreasedNormals.Smooth(mesh));
        Assert.InRange(felt, 0, 0.6 * flat);

        double Off(CreasedNormals shaded) => Points(shaded.Positions).Zip(Points(shaded.Normals))
            .Average(pair => (pair.Second - rod.Sense(pair.First).Gradient.Normalised()).Length);
    }

    [Fact]
    public void Flat_faces_stay_flat_beside_a_rounding()
    {
        var box = Shape.Box(4, 3, 2, 0.1);
        var mesh = Mesher.Run(box, new MeshSettings(0.05, 0.005, true), stop: TestContext.Current.CancellationToken).Mesh;
        var shaded = CreasedNormals.Of(mesh, box);
        var normals = Points(shaded.Normals).ToList();
        var points = Points(shaded.Positions).ToList();
        var flat = Enumerable.Range(0, normals.Count).Where(i => points[i].Z > 0.9999).ToList();
        Assert.NotEmpty(flat);
        Assert.All(flat, i => Assert.InRange(normals[i].Z, Math.Cos(8 * Math.PI / 180), 1 + 1e-6));
    }

    [Fact]
    public void Sharp_edges_of_a_solid_have_both_normals()
    {
        var box = Shape.Box(4, 3, 2);
        var mesh = Mesher.Run(box, new MeshSettings(0.1, 0.005, true), stop: TestContext.Current.CancellationToken).Mesh;
        Assert.All(
            Points(CreasedNormals.Of(mesh, box).Normals),
            normal => Assert.Equal(1, Math.Max(Math.Abs(normal.X), Math.Max(Math.Abs(normal.Y), Math.Abs(normal.Z))), 1e-5));
    }

    [Fact]
    public void A_stone_shades_every_facet_flat()
    {
        var mesh = SampleScenes.Spindle(1, 0.4, 0.8);
        var shaded = CreasedNormals.Flat(mesh);
        var normals = Points(shaded.Normals).ToList();
        Assert.Equal(mesh.TriangleCount * 3, normals.Count);
        for (var i = 0; i < normals.Count; i += 3)
        {
            Assert.Equal(normals[i], normals[i + 1]);
            Assert.Equal(normals[i], normals[i + 2]);
        }
    }

    [Fact]
    public void The_shape_stays_and_every_normal_has_length_one()
        => SampleScenes.Rings.Sample(mesh =>
        {
            var shaded = CreasedNormals.Smooth(mesh);
            var back = new Mesh([.. shaded.Positions], [.. shaded.Triangles]);
            return back.TriangleCount == mesh.TriangleCount
                && Math.Abs(SampleScenes.Volume(back) - SampleScenes.Volume(mesh)) < 1e-9
                && Points(shaded.Normals).All(normal => Math.Abs(normal.Length - 1) < 1e-6);
        });

    [Fact]
    public void A_triangle_without_area_is_left_out()
    {
        var box = SampleScenes.Box(1, 1, 1);
        var with = new Mesh(box.Positions.ToArray(), [.. box.Triangles, 0, 1, 0]);
        Assert.Equal(36, CreasedNormals.Smooth(with).Triangles.Count);
    }

    private static Mesh Drum(int sides)
    {
        var positions = new List<float>();
        var triangles = new List<int>();
        int foot = 2 * sides, head = foot + 1;
        for (var i = 0; i < sides; i++)
        {
            float x = (float)Math.Cos(2 * Math.PI * i / sides), y = (float)Math.Sin(2 * Math.PI * i / sides);
            positions.AddRange([x, y, 0, x, y, 1]);
            int a = 2 * i, b = 2 * ((i + 1) % sides);
            triangles.AddRange([a, b, b + 1, a, b + 1, a + 1, b, a, foot, a + 1, b + 1, head]);
        }

        positions.AddRange([0, 0, 0, 0, 0, 1]);
        return new Mesh([.. positions], [.. triangles]);
    }

    private static IEnumerable<Vec3> Points(IReadOnlyList<float> numbers)
        => Enumerable.Range(0, numbers.Count / 3).Select(i => new Vec3(numbers[i * 3], numbers[i * 3 + 1], numbers[i * 3 + 2]));
}
