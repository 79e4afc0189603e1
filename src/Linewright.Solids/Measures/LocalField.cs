using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Measures;

/// <summary>
/// A solid's distances for many scattered points: space is divided into cubes, each with only the operands that
/// matter in it, and the points of a cube are evaluated together.
/// </summary>
/// <remarks>
/// Gives the same bits as the whole solid (<see cref="Solid.Near"/> promises that), only sooner. Cubes are pruned when
/// first met; <see cref="At"/> alone is safe to call from several threads, which may prune a cube twice.
/// </remarks>
internal sealed class LocalField
{
    // Below this many cubes a counting sort over them costs less than the evaluation of one operand.
    private const int MostCells = 30_000;

    // Keeps a point on a cube's rim inside the cube's ball in single precision.
    private const double Rim = 1e-3;

    private readonly Solid solid;
    private readonly Vec3 low;
    private readonly double cell, reach;
    private readonly int countX, countY, countZ;
    private readonly Solid?[] near;
    private readonly int[] starts;

    /// <summary>Divides a box into cubes of at least the given edge, mm; points outside the box see the whole solid.</summary>
    /// <param name="solid">The solid.</param>
    /// <param name="region">The box.</param>
    /// <param name="cell">Edge of a cube.</param>
    /// <param name="reach">How far round a point <see cref="At"/> must hold, mm.</param>
    public LocalField(Solid solid, Bounds region, double cell, double reach = 0)
    {
        this.solid = solid;
        this.reach = reach;
        var size = region.Size;
        var edge = Math.Max(cell, Math.Cbrt((size.X + cell) * (size.Y + cell) * (size.Z + cell) / MostCells));
        low = region.Low;
        (countX, countY, countZ) = (Steps(size.X), Steps(size.Y), Steps(size.Z));
        this.cell = edge;
        near = new Solid?[countX * countY * countZ];
        starts = new int[near.Length + 2];

        int Steps(double length) => 1 + (int)(length / edge);
    }

    /// <summary>The solid without what cannot matter near a point; valid within the point's cube and the reach round it.</summary>
    public Solid At(Vec3 p) => Pruned(CellOf(p.X, p.Y, p.Z));

    /// <summary>Signed distances at points of any number.</summary>
    public void Distances(ReadOnlySpan<float> x, ReadOnlySpan<float> y, ReadOnlySpan<float> z, Span<float> distance)
        => Evaluate(x, y, z, distance, default, default, default);

    /// <summary>Signed distances and gradients at points of any number.</summary>
    public void Gradients(
        ReadOnlySpan<float> x, ReadOnlySpan<float> y, ReadOnlySpan<float> z,
        Span<float> distance, Span<float> gx, Span<float> gy, Span<float> gz)
        => Evaluate(x, y, z, distance, gx, gy, gz);

    private void Evaluate(
        ReadOnlySpan<float> x, ReadOnlySpan<float> y, ReadOnlySpan<float> z,
        Span<float> distance, Span<float> gx, Span<float> gy, Span<float> gz)
    {
        // Sort the points by cube.
        var count = x.Length;
        int[] cells = new int[count], order = new int[count];
        Array.Clear(starts);
        for (var i = 0; i < count; i++)
        {
            cells[i] = CellOf(x[i], y[i], z[i]);
            starts[cells[i] + 1]++;
        }

        for (var c = 1; c < starts.Length; c++)
        {
            starts[c] += starts[c - 1];
        }

        for (var i = 0; i < count; i++)
        {
            order[starts[cells[i]]++] = i;
        }

        // Gather each run of one cube, evaluate it, scatter the results. A run is padded with its first point.
        const int Most = 1024;
        var arena = Scratch.Arena;
        var mark = arena.Mark;
        var wantsGradient = !gx.IsEmpty;
        Span<float> px = arena.Take(Most), py = arena.Take(Most), pz = arena.Take(Most), d = arena.Take(Most);
        Span<float> hx = arena.Take(Most), hy = arena.Take(Most), hz = arena.Take(Most);
        for (var begin = 0; begin < count;)
        {
            var at = cells[order[begin]];
            var length = 1;
            while (length < Most && begin + length < count && cells[order[begin + length]] == at)
            {
                length++;
            }

            var padded = (length + Solid.BatchStep - 1) / Solid.BatchStep * Solid.BatchStep;
            for (var k = 0; k < padded; k++)
            {
                var i = order[begin + (k < length ? k : 0)];
                (px[k], py[k], pz[k]) = (x[i], y[i], z[i]);
            }

            var part = Pruned(at);
            if (wantsGradient)
            {
                part.Gradients(px[..padded], py[..padded], pz[..padded], d[..padded], hx[..padded], hy[..padded], hz[..padded], arena);
            }
            else
            {
                part.Distances(px[..padded], py[..padded], pz[..padded], d[..padded], arena);
            }

            for (var k = 0; k < length; k++)
            {
                var i = order[begin + k];
                distance[i] = d[k];
                if (wantsGradient)
                {
                    (gx[i], gy[i], gz[i]) = (hx[k], hy[k], hz[k]);
                }
            }

            begin += length;
        }

        arena.Release(mark);
    }

    private int CellOf(double x, double y, double z)
    {
        double u = (x - low.X) / cell, v = (y - low.Y) / cell, w = (z - low.Z) / cell;
        return u >= 0 && v >= 0 && w >= 0 && u < countX && v < countY && w < countZ
            ? ((int)w * countY + (int)v) * countX + (int)u
            : near.Length;
    }

    private Solid Pruned(int at)
    {
        if (at == near.Length)
        {
            return solid;
        }

        if (near[at] is { } known)
        {
            return known;
        }

        int i = at % countX, j = at / countX % countY, k = at / countX / countY;
        var centre = low + new Vec3(i + 0.5, j + 0.5, k + 0.5) * cell;
        var radius = cell * Math.Sqrt(0.75) + reach + Rim;
        return near[at] = solid.Near((float)centre.X, (float)centre.Y, (float)centre.Z, (float)radius, out _);
    }
}
