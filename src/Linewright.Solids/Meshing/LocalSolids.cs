using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Meshing;

/// <summary>The solid near a point, kept for cubes of a chunk so that the same is not taken out twice.</summary>
internal sealed class LocalSolids
{
    private const int MostAlong = 24;
    private readonly Solid?[] near;
    private readonly float lowX, lowY, lowZ, side, reachLimit;
    private readonly int countX, countY, countZ;

    /// <param name="solid">The whole solid.</param>
    /// <param name="box">Where points will lie, finite and not empty.</param>
    /// <param name="side">Edge of a cube, mm; the reach served is as long.</param>
    public LocalSolids(Solid solid, Bounds box, double side)
    {
        var size = box.Size;
        side = Math.Max(side, Math.Max(size.X, Math.Max(size.Y, size.Z)) / MostAlong);
        this.side = (float)side;
        reachLimit = (float)(1.5 * side);
        (lowX, lowY, lowZ) = ((float)box.Low.X, (float)box.Low.Y, (float)box.Low.Z);
        (countX, countY, countZ) = ((int)(size.X / side) + 1, (int)(size.Y / side) + 1, (int)(size.Z / side) + 1);
        near = new Solid?[countX * countY * countZ];
        var centre = box.Centre;
        Whole = solid.Near((float)centre.X, (float)centre.Y, (float)centre.Z, (float)(size.Length * 0.6 + 1e-3), out _);
    }

    /// <summary>The solid near all of the box.</summary>
    public Solid Whole { get; }

    /// <summary>A solid that gives the right distances at the point and within the reach of it.</summary>
    /// <remarks>The reach must stay within the box given at the start, as all vertices do.</remarks>
    public Solid At(float x, float y, float z, float reach)
    {
        if (reach > reachLimit)
        {
            return Whole;
        }

        var i = Math.Clamp((int)((x - lowX) / side), 0, countX - 1);
        var j = Math.Clamp((int)((y - lowY) / side), 0, countY - 1);
        var k = Math.Clamp((int)((z - lowZ) / side), 0, countZ - 1);
        return near[(k * countY + j) * countX + i] ??= Whole.Near(
            lowX + (i + 0.5f) * side, lowY + (j + 0.5f) * side, lowZ + (k + 0.5f) * side, side * 0.8661f + reachLimit + 1e-3f, out _);
    }
}
