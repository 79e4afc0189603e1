using Linewright.Parts;
using Linewright.Solids.Meshing;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Tests.Core;

/// <summary>What is open in a link is wide enough to be cast, cleaned out and polished, or it is closed. Widths assumed: see the decision on closed sides.</summary>
public class OpeningsTests
{
    private const double RayMm = 0.05, LeastSlitMm = 0.15, LeastGalleryMm = 0.4;

    /// <summary>Stones and metals whose links are looked at.</summary>
    public static TheoryData<double, string> Links =>
    [
        .. ((double[])[1.5, 2, 2.25, 2.35, 2.5, 2.9, 3, 3.5, 4, 5, 6, 7, 8]).Select(mm => new TheoryDataRow<double, string>(mm, "gold-750-white-pd")),
        .. ((double[])[2, 3, 4, 8]).Select(mm => new TheoryDataRow<double, string>(mm, "silver-925")),
    ];

    [Theory]
    [MemberData(nameof(Links))]
    public void No_two_faces_of_a_link_stand_a_slit_apart(double diameter, string metal)
    {
        // Every face, looked at along its normal: what it sees nearby must not look straight back.
        var link = CheckedPieces.Piece(diameter, metal)[PartRole.Link].AsSet;
        var mesh = Mesher.Run(link, new MeshSettings(0.05, 0.02, simplify: true), stop: TestContext.Current.CancellationToken).Mesh;
        var places = 0;
        for (var triangle = 0; triangle < mesh.TriangleCount; triangle++)
        {
            var corners = mesh.Triangles.Slice(3 * triangle, 3);
            Vec3 a = mesh.Vertex(corners[0]), b = mesh.Vertex(corners[1]) - a, c = mesh.Vertex(corners[2]) - a;
            var area = b.Cross(c).Length;
            if (area < 1e-9)
            {
                continue;
            }

            var normal = b.Cross(c) * (1 / area);
            var parts = (int)Math.Ceiling(Math.Sqrt(area) / 0.15);
            for (var i = 0; i < parts * parts; i++)
            {
                double u = (i / parts + 1 / 3.0) / parts, v = (i % parts + 1 / 3.0) / parts;
                if (u + v < 1 && Slit(link, a + b * u + c * v, normal) is { } slit)
                {
                    Assert.Fail(FormattableString.Invariant($"{slit:0.00} mm open at {a + b * u + c * v}"));
                }

                places++;
            }
        }

        Assert.True(places > 1000);
    }

    [Theory]
    [InlineData(2.35)]
    [InlineData(2.9)]
    [InlineData(3.0)]
    [InlineData(3.5)]
    [InlineData(4.0)]
    [InlineData(5.0)]
    [InlineData(6.5)]
    [InlineData(8.0)]
    public void A_gallery_is_open_or_closed_and_nothing_between(double diameter)
    {
        // The link from the side: of all rays across it between rails and joints, those that pass lie in windows that a thread passes too.
        var piece = CheckedPieces.Piece(diameter, "gold-750-white-pd");
        var (form, link) = (piece.Link, piece[PartRole.Link].AsSet);
        double left = -form.PitchMm / 2 + form.Hinge.CheekRadiusMm, right = form.PitchMm / 2 - form.Hinge.CheekSweepMm;
        double low = form.RailMm / 2, top = form.UpperTopMm - 0.2;
        int across = (int)((right - left) / RayMm), high = (int)((top - low) / RayMm);
        var open = new bool[across, high];
        for (var i = 0; i < across * high; i++)
        {
            open[i % across, i / across] = Passes(link, left + i % across * RayMm, low + i / across * RayMm, form.WidthMm / 2 + 0.1);
        }

        var windows = Windows(open);
        Assert.Equal(form.SideHalfMm > 0 ? 0 : 1, windows.Count);
        Assert.All(windows, width => Assert.True(width >= LeastGalleryMm, FormattableString.Invariant($"a window of {width:0.00} mm")));
        Assert.Equal(diameter < 4.5, form.SideHalfMm > 0);
    }

    // How far off the face opposite is, where it is nearer than may be; parallel within 25 degrees.
    private static double? Slit(Solid solid, Vec3 at, Vec3 normal)
    {
        for (var way = 0.02; way < LeastSlitMm;)
        {
            var left = solid.Distance(at + normal * way);
            if (left < 0.001)
            {
                var (_, gradient) = solid.Sense(at + normal * way);
                return gradient.Dot(normal) < -0.9 * gradient.Length ? way : null;
            }

            way += Math.Max(0.8 * left, 0.002);
        }

        return null;
    }

    private static bool Passes(Solid solid, double x, double z, double half)
    {
        for (double y = -half; y < half;)
        {
            var left = solid.Distance(new Vec3(x, y, z));
            if (left <= 0)
            {
                return false;
            }

            y += Math.Max(0.7 * left, 0.01);
        }

        return true;
    }

    // Least width of each connected window: the side of the largest square in it.
    private static List<double> Windows(bool[,] open)
    {
        int across = open.GetLength(0), high = open.GetLength(1);
        var (window, square) = (new int[across, high], new int[across, high]);
        var widths = new List<double>();
        for (var i = 0; i < across * high; i++)
        {
            if (open[i % across, i / across] && window[i % across, i / across] == 0)
            {
                widths.Add(0);
                var todo = new Stack<(int X, int Z)>([(i % across, i / across)]);
                while (todo.TryPop(out var cell))
                {
                    if (cell.X >= 0 && cell.Z >= 0 && cell.X < across && cell.Z < high && open[cell.X, cell.Z] && window[cell.X, cell.Z] == 0)
                    {
                        window[cell.X, cell.Z] = widths.Count;
                        todo.Push((cell.X - 1, cell.Z));
                        todo.Push((cell.X + 1, cell.Z));
                        todo.Push((cell.X, cell.Z - 1));
                        todo.Push((cell.X, cell.Z + 1));
                    }
                }
            }
        }

        for (var i = 0; i < across * high; i++)
        {
            int x = i % across, z = i / across;
            if (open[x, z])
            {
                square[x, z] = 1 + (x == 0 || z == 0 ? 0 : Math.Min(square[x - 1, z - 1], Math.Min(square[x - 1, z], square[x, z - 1])));
                widths[window[x, z] - 1] = Math.Max(widths[window[x, z] - 1], square[x, z] * RayMm);
            }
        }

        return widths;
    }
}
