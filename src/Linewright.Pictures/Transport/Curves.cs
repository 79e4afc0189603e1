namespace Linewright.Pictures.Transport;

/// <summary>Reads a column of the table of curves at the four wavelengths of a path: a quarter of all bins apart.</summary>
internal static class Curves
{
    public static Four Read<TWorld>(ref TWorld world, int column, int bin)
        where TWorld : struct, IWorld => new(
            world.Curve(column + bin),
            world.Curve(column + ((bin + WaveBin.Count / 4) & (WaveBin.Count - 1))),
            world.Curve(column + ((bin + WaveBin.Count / 2) & (WaveBin.Count - 1))),
            world.Curve(column + ((bin + 3 * WaveBin.Count / 4) & (WaveBin.Count - 1))));
}
