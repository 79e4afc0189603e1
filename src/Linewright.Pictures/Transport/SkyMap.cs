namespace Linewright.Pictures.Transport;

/// <summary>Makes the map by which directions of the surroundings are chosen.</summary>
internal static class SkyMap
{
    /// <summary>Points along a cell's side at which its brightness is read.</summary>
    private const int Fine = 4;

    /// <summary>Cells in the order of <see cref="Sky"/>, and the mean radiance over the sphere.</summary>
    public static (SkyCell[] Cells, double Mean) Of<TWorld>(ref TWorld world, in SkyRecord sky)
        where TWorld : struct, IWorld
    {
        const int side = SkyRecord.Side;
        var power = new double[side * side];
        double total = 0, solid = 0;
        for (var i = 0; i < power.Length; i++)
        {
            double sum = 0;
            for (var k = 0; k < Fine * Fine; k++)
            {
                var u = (i % side + (k % Fine + 0.5f) / Fine) * (2f / side) - 1;
                var v = (i / side + (k / Fine + 0.5f) / Fine) * (2f / side) - 1;
                var d = Sky.Unfold(u, v, out var stretch);
                sum += Sky.Radiance(ref world, sky, d) / stretch;
                solid += 1 / stretch;
            }

            power[i] = sum;
            total += sum;
        }

        // A strip may brush a cell between the points: no cell goes without.
        var floor = total > 0 ? 0.02 * total / power.Length : 1;
        var raised = power.Select(p => p + floor).ToArray();
        return (Alias(raised), total / solid);
    }

    private static SkyCell[] Alias(double[] power)
    {
        var count = power.Length;
        var mean = power.Sum() / count;
        var cells = power.Select(p => new SkyCell { Stay = 1, Density = (float)(p / mean / 4) }).ToArray();
        var left = power.Select(p => p / mean).ToArray();
        var poor = new Stack<int>(Enumerable.Range(0, count).Where(i => left[i] < 1));
        var rich = new Stack<int>(Enumerable.Range(0, count).Where(i => left[i] >= 1));
        while (poor.Count > 0 && rich.Count > 0)
        {
            int p = poor.Pop(), r = rich.Peek();
            cells[p].Stay = (float)left[p];
            cells[p].Other = r;
            left[r] -= 1 - left[p];
            if (left[r] < 1)
            {
                poor.Push(rich.Pop());
            }
        }

        return cells;
    }
}
