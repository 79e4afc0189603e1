using Linewright.Materials;
using Linewright.Parts;
using Linewright.Solids.Measures;
using Linewright.Solids.Meshing;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Tests.Core;

/// <summary>What a chain makes of a pattern: every vertex of the pattern's file, carried through the steps, and how far it then lies from the finished part.</summary>
internal sealed class ChainProduct
{
    // Within so much of where a kept face meets a polished one, the step between them ends in a rounded edge: allowance and edge together.
    private const double BorderMm = 0.20;

    // Where two surfaces are blended the distance changes more slowly than the way: by this a blend is told from a face.
    private const double FaceSlope = 0.985;

    private const double Step = 1e-3;

    private ChainProduct(List<Place> places) => Places = places;

    /// <summary>Where a vertex lies.</summary>
    internal enum Ground
    {
        /// <summary>On a face, away from blends and from where faces of two kinds meet.</summary>
        Face,

        /// <summary>In a fillet or on a broken edge between faces of one kind.</summary>
        Blend,

        /// <summary>Beside a line where a kept face, a polished one or worked metal meet.</summary>
        Border,
    }

    /// <summary>Vertices on metal that the bench neither bends nor files.</summary>
    public List<Place> Places { get; }

    /// <summary>Runs a pattern through its chain.</summary>
    /// <param name="part">The part.</param>
    /// <param name="pattern">The mesh of its file.</param>
    /// <param name="chain">The steps.</param>
    public static ChainProduct Of(Part part, Mesh pattern, ProcessChain chain)
    {
        // On the surface, not on the mesh: the file lies within some micrometres of it, which is another test's matter.
        var points = Enumerable.Range(0, pattern.VertexCount).Select(i => pattern.Vertex(i) * chain.Scale).ToList();
        var (normals, _) = Slopes(part.AsCast, points);
        var off = ManyDistances.Of(part.AsCast, points);
        points = [.. points.Select((point, i) => point - normals[i] * off[i])];
        (normals, var onCast) = Slopes(part.AsCast, points);

        // By the two solids: kept where they are the same, polished where they are the allowance apart, else the setter's.
        var allowance = chain.AllowanceMm(FaceKind.Polished);
        var over = ManyDistances.Of(part.AsSet, points);
        var isWorked = over.Select(mm => mm > 1.7 * allowance || mm < -0.03).ToArray();
        var kinds = over.Select(mm => mm > allowance / 2 ? FaceKind.Polished : FaceKind.Kept).ToArray();
        var isBorder = Beside(pattern, points, (a, b) => kinds[a] != kinds[b] || isWorked[a] != isWorked[b]);

        var finished = points.Select(point => point * chain.PatternScale).ToList();
        foreach (var step in chain.Steps)
        {
            for (var i = 0; i < finished.Count; i++)
            {
                finished[i] = finished[i] * step.Scale - normals[i] * step.LossMm(kinds[i]);
            }
        }

        var left = ManyDistances.Of(part.AsSet, finished);
        var (_, onSet) = Slopes(part.AsSet, finished);
        return new ChainProduct([.. Enumerable.Range(0, finished.Count).Where(i => !isWorked[i]).Select(i => new Place(
            kinds[i], isBorder[i] ? Ground.Border : Math.Min(onCast[i], onSet[i]) < FaceSlope ? Ground.Blend : Ground.Face, left[i]))]);
    }

    // Marks what lies near an edge of the mesh whose ends are told apart; a grid of cells keeps it short.
    private static bool[] Beside(Mesh mesh, List<Vec3> points, Func<int, int, bool> areApart)
    {
        var cells = new Dictionary<(int, int, int), List<Vec3>>();
        for (var t = 0; t < mesh.Triangles.Length; t++)
        {
            int a = mesh.Triangles[t], b = mesh.Triangles[t % 3 == 2 ? t - 2 : t + 1];
            if (a < b && areApart(a, b))
            {
                var middle = (points[a] + points[b]) * 0.5;
                var cell = Cell(middle);
                (cells.TryGetValue(cell, out var list) ? list : cells[cell] = []).Add(middle);
            }
        }

        return [.. points.Select(point =>
        {
            var (x, y, z) = Cell(point);
            for (var near = 0; near < 27; near++)
            {
                if (cells.TryGetValue((x + near % 3 - 1, y + near / 3 % 3 - 1, z + near / 9 - 1), out var list) && list.Exists(middle => (middle - point).Length < BorderMm))
                {
                    return true;
                }
            }

            return false;
        })];

        static (int, int, int) Cell(Vec3 at) => ((int)Math.Floor(at.X / BorderMm), (int)Math.Floor(at.Y / BorderMm), (int)Math.Floor(at.Z / BorderMm));
    }

    private static (Vec3[] Normals, double[] Slopes) Slopes(Solid solid, List<Vec3> points)
    {
        double[] Along(Vec3 step)
        {
            float[] ahead = ManyDistances.Of(solid, [.. points.Select(point => point + step)]), behind = ManyDistances.Of(solid, [.. points.Select(point => point - step)]);
            return [.. ahead.Zip(behind, (a, b) => (a - b) / (2 * Step))];
        }

        double[] x = Along(Vec3.UnitX * Step), y = Along(Vec3.UnitY * Step), z = Along(Vec3.UnitZ * Step);
        var gradients = x.Select((value, i) => new Vec3(value, y[i], z[i])).ToList();
        return ([.. gradients.Select(gradient => gradient.Length > 0 ? gradient.Normalised() : Vec3.Zero)], [.. gradients.Select(gradient => gradient.Length)]);
    }

    /// <summary>A vertex that came through.</summary>
    /// <param name="Kind">The face it lay on as cast.</param>
    /// <param name="Ground">Where on it.</param>
    /// <param name="LeftMm">How far it lies from the finished part; above 0 metal is left over.</param>
    internal readonly record struct Place(FaceKind Kind, Ground Ground, double LeftMm);
}
