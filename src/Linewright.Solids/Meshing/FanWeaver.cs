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
        Span<int> start = [block.CornerX(quad.Cell), block.CornerY(quad.Cell), block.CornerZ(quad.Cell)];
        var crossing = EdgeCrossings.Bisect(grid, block.Local, start[0], start[1], start[2], axis);
        var hub = Vertex(crossing);

        Span<int> ring = stackalloc int[8];
        var count = 0;
        ReadOnlySpan<int> corners = [quad.A, quad.B, quad.C, quad.D];
        ReadOnlySpan<(int Axis, int Sign)> steps = [(v, 1), (u, -1), (v, -1), (u, 1)];
        for (var i = 0; i < 4; i++)
        {
            ring[count++] = corners[i];
            if (((quad.Alternating >> i) & 1) != 0)
            {
                ring[count++] = OnFace(block, start, axis, quad.IsTurned, crossing, steps[i].Axis, steps[i].Sign);
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

    /// <summary>Middle of the segment through the crossing on an alternating face.</summary>
    /// <remarks>It cuts off the edge's inside corner, or its outside corner where the face's middle is inside.</remarks>
    private int OnFace(
        Block block, ReadOnlySpan<int> edge, int axis, bool isTurned, (float X, float Y, float Z) crossing, int towards, int sign)
    {
        var middle = (X: Coordinate(edge, 0), Y: Coordinate(edge, 1), Z: Coordinate(edge, 2));
        var isJoined = block.Local.DistanceSingle(middle.X, middle.Y, middle.Z) < 0;

        // The edge's start is the corner cut off where it is inside and the face not joined, or neither.
        var isAtStart = isTurned == isJoined;
        Span<int> corner = [edge[0], edge[1], edge[2]];
        corner[axis] += isAtStart ? 0 : 1;
        Span<int> start = [corner[0], corner[1], corner[2]];
        start[towards] -= sign < 0 ? 1 : 0;
        int normal = 3 - axis - towards, ahead = isAtStart ? 1 : 0, up = sign > 0 ? 1 : 0;
        var quadrant = (normal + 1) % 3 == axis ? ahead | (up << 1) : up | (ahead << 1);
        var key = new FacePoint(corner[0], corner[1], corner[2], normal * 4 + quadrant);
        if (!facePoints.TryGetValue(key, out var vertex))
        {
            var (x, y, z) = EdgeCrossings.Bisect(grid, block.Local, start[0], start[1], start[2], towards);
            vertex = Vertex((0.5f * (crossing.X + x), 0.5f * (crossing.Y + y), 0.5f * (crossing.Z + z)));
            facePoints[key] = vertex;
        }

        return vertex;

        // The same arithmetic as the sampler's, so that both decide alike.
        float Coordinate(ReadOnlySpan<int> low, int along)
        {
            var origin = along == 0 ? grid.OriginX : along == 1 ? grid.OriginY : grid.OriginZ;
            var part = along == axis ? 0.5f : along != towards ? 0 : sign > 0 ? 0.5f : -0.5f;
            return origin + (low[along] + part) * grid.Cell;
        }
    }

    private int Vertex((float X, float Y, float Z) p)
    {
        var vertex = vertexCount + Positions.Count / 3;
        Positions.Add(p.X);
        Positions.Add(p.Y);
        Positions.Add(p.Z);
        return vertex;
    }

    /// <summary>A grid corner that is cut off, and the quadrant of the face about it.</summary>
    private readonly record struct FacePoint(int X, int Y, int Z, int Quadrant);
}
