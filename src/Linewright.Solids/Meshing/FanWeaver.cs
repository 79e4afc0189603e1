namespace Linewright.Solids.Meshing;

/// <summary>Turns delicate quads into fans about the crossing on their grid edge.</summary>
/// <remarks>
/// Where a side of the quad goes through a face whose corners alternate, two sheets pass that face: the side gets a
/// vertex of its own in the middle of its sheet's segment there, shared by the two quads that meet at it.
/// </remarks>
internal sealed class FanWeaver(CellGrid grid, int vertexCount)
{
    private readonly Dictionary<FacePoint, int> facePoints = [];

    /// <summary>Positions of the vertices added after the cells' own.</summary>
    public List<float> Positions { get; } = [];

    /// <summary>Triangles of all fans.</summary>
    public List<int> Triangles { get; } = [];

    public void Add(Block block, in Quad quad)
    {
        int axis = quad.Axis, u = (axis + 1) % 3, v = (axis + 2) % 3;
        Span<int> inside = [block.CornerX(quad.Cell), block.CornerY(quad.Cell), block.CornerZ(quad.Cell)];
        var crossing = EdgeCrossings.Bisect(grid, block.Local, inside[0], inside[1], inside[2], axis);
        var hub = Vertex(crossing);
        inside[axis] += quad.IsTurned ? 1 : 0;

        Span<int> ring = stackalloc int[8];
        var count = 0;
        ReadOnlySpan<int> corners = [quad.A, quad.B, quad.C, quad.D];
        ReadOnlySpan<(int Axis, int Sign)> steps = [(v, 1), (u, -1), (v, -1), (u, 1)];
        for (var i = 0; i < 4; i++)
        {
            ring[count++] = corners[i];
            if (((quad.Alternating >> i) & 1) != 0)
            {
                ring[count++] = OnFace(block, inside, axis, !quad.IsTurned, crossing, steps[i].Axis, steps[i].Sign);
            }
        }

        for (var i = 0; i < count; i++)
        {
            int from = ring[i], to = ring[(i + 1) % count];
            Triangles.Add(hub);
            Triangles.Add(quad.IsTurned ? to : from);
            Triangles.Add(quad.IsTurned ? from : to);
        }
    }

    /// <summary>Middle of the segment that cuts an inside corner off an alternating face, between its two crossings.</summary>
    private int OnFace(
        Block block, ReadOnlySpan<int> inside, int axis, bool isAhead, (float X, float Y, float Z) crossing, int towards, int sign)
    {
        Span<int> start = [inside[0], inside[1], inside[2]];
        start[towards] -= sign < 0 ? 1 : 0;
        int normal = 3 - axis - towards, ahead = isAhead ? 1 : 0, up = sign > 0 ? 1 : 0;
        var quadrant = (normal + 1) % 3 == axis ? ahead | (up << 1) : up | (ahead << 1);
        var key = new FacePoint(inside[0], inside[1], inside[2], normal * 4 + quadrant);
        if (!facePoints.TryGetValue(key, out var vertex))
        {
            var (x, y, z) = EdgeCrossings.Bisect(grid, block.Local, start[0], start[1], start[2], towards);
            vertex = Vertex((0.5f * (crossing.X + x), 0.5f * (crossing.Y + y), 0.5f * (crossing.Z + z)));
            facePoints[key] = vertex;
        }

        return vertex;
    }

    private int Vertex((float X, float Y, float Z) p)
    {
        var vertex = vertexCount + Positions.Count / 3;
        Positions.Add(p.X);
        Positions.Add(p.Y);
        Positions.Add(p.Z);
        return vertex;
    }

    /// <summary>An inside grid corner, and the quadrant of the face about it.</summary>
    private readonly record struct FacePoint(int X, int Y, int Z, int Quadrant);
}
