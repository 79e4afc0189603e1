using System.Runtime.CompilerServices;
using Linewright.Solids.Lanes;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Meshing;

/// <summary>Collapses the edges of one piece, cheapest first, as long as the surface stays within the deviation.</summary>
/// <remarks>
/// The quadrics only order the work. Each collapse is judged by itself: it must keep the surface a manifold (link
/// condition), turn no triangle over nor squeeze it to a sliver, face every new triangle along the distance's
/// gradient (tests against the old triangle drift over many collapses), and keep |distance| within the deviation at
/// the new vertex, the middles of its edges and the centroids of its triangles; inside a flat face the plane stands
/// for the distance. It does not look for other parts of the surface nearby: <see cref="Simplifier"/> does.
/// Longer than other files: valuing, judging and linking share the arrays of one piece and are entered millions of times.
/// </remarks>
internal sealed class EdgeCollapser
{
    private const int MostTriangles = 32; // round a new vertex: more make bad stars
    private const float LeastTurn = 0.5f; // cosine between a triangle before and after one collapse
    private const float LeastFacing = 0.3f; // cosine between a triangle and the gradient at its centroid
    private const float Sliver = 0.04f; // height over longest side below which a triangle may get no flatter
    private const float SliverLoss = 0.7f;

    // Flat faces and the edges between them come out true: a collapse may leave a flat face by a two-thousandth of
    // the deviation and what rounding takes.
    private const double FlatShare = 5e-4;
    private const double FlatLeast = 6e-6;

    // Where the fine mesh is further off than allowed, a collapse that brings it this much nearer is welcome.
    private const float Better = 0.9f;

    // Among edges that cost nothing the short ones go first.
    private const double LengthCost = 1e-9;

    private readonly ChunkMesh mesh;
    private readonly LocalSolids solids;
    private readonly FlatFaces.Plane[] planes;
    private readonly float deviation;
    private readonly double flatLimit;
    private readonly Quadric[] quadrics;
    private readonly int[] version, seen;
    private readonly int[] faceAt; // the flat face that holds all triangles of a vertex, or none
    private readonly bool[] isOff;
    private readonly CollapseQueue queue = new();
    private readonly double originX, originY, originZ;
    private readonly int[] rest = new int[MostTriangles];
    private readonly int[] faceBetween = new int[2];
    private readonly float[] normals = new float[MostTriangles * 3];
    private int mark, collapses;
    private bool triesEnds;

    public EdgeCollapser(ChunkMesh mesh, LocalSolids solids, FlatFaces.Plane[] planes, double deviation)
    {
        this.mesh = mesh;
        this.solids = solids;
        this.planes = planes;
        this.deviation = (float)deviation;
        flatLimit = FlatLimit(deviation);
        var count = mesh.IsHeld.Length;
        quadrics = new Quadric[count];
        version = new int[count];
        seen = new int[count];
        isOff = new bool[count];
        faceAt = FacesAt(mesh);
        (originX, originY, originZ) = count > 0 ? (mesh.Positions[0], mesh.Positions[1], mesh.Positions[2]) : default;
    }

    /// <summary>How far a vertex of a flat face may lie off it, mm.</summary>
    public static double FlatLimit(double deviation) => FlatLeast + FlatShare * deviation;

    /// <summary>Collapses what can be collapsed.</summary>
    /// <param name="rounds">
    /// How often to look at all edges: one that was refused may do once the triangles round it have changed. From the
    /// second round on an edge may also collapse to one of its ends, which flat faces need.
    /// </param>
    /// <param name="arena">Scratch memory.</param>
    public void Run(int rounds, Arena arena)
    {
        new StarPlanes(mesh, planes, new Vec3(originX, originY, originZ), deviation).Gather(solids.Whole, quadrics, isOff, arena);
        for (var round = 0; round < rounds; round++)
        {
            var before = collapses;
            triesEnds = round > 0;
            PushAll();
            while (queue.TryPop(out var edge))
            {
                if (version[edge.A] == edge.VersionA && version[edge.B] == edge.VersionB)
                {
                    Try(edge.A, edge.B, arena);
                }
            }

            if (collapses == before)
            {
                return;
            }
        }
    }

    private static int[] FacesAt(ChunkMesh mesh)
    {
        const int unseen = -2;
        var faces = new int[mesh.IsHeld.Length];
        Array.Fill(faces, unseen);
        for (var corner = 0; corner < mesh.Corners.Length; corner++)
        {
            ref var face = ref faces[mesh.Corners[corner]];
            var own = mesh.FaceOf[corner / 3];
            face = face == unseen || face == own ? own : FlatFaces.None;
        }

        return faces;
    }

    private void PushAll()
    {
        var corners = mesh.Corners;
        for (var corner = 0; corner < corners.Length; corner++)
        {
            int a = corners[corner], b = corners[ChunkMesh.Turn(corner)];
            if (a < b && !mesh.IsDead[corner / 3])
            {
                Push(a, b);
            }
        }
    }

    private Vec3 At(int vertex) => new(mesh.Positions[vertex * 3], mesh.Positions[vertex * 3 + 1], mesh.Positions[vertex * 3 + 2]);

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private double Cost(int a, int b, out double x, out double y, out double z)
    {
        var p = mesh.Positions;
        double ax = p[a * 3] - originX, ay = p[a * 3 + 1] - originY, az = p[a * 3 + 2] - originZ;
        double bx = p[b * 3] - originX, by = p[b * 3 + 1] - originY, bz = p[b * 3 + 2] - originZ;
        var length = (ax - bx) * (ax - bx) + (ay - by) * (ay - by) + (az - bz) * (az - bz);
        if (IsInFace(a, b))
        {
            // All about the edge is in one plane.
            (x, y, z) = (0.5 * (ax + bx) + originX, 0.5 * (ay + by) + originY, 0.5 * (az + bz) + originZ);
            return LengthCost * length;
        }

        var sum = quadrics[a];
        sum.Add(in quadrics[b]);
        var cost = sum.Best(0.5 * (ax + bx), 0.5 * (ay + by), 0.5 * (az + bz), length, out x, out y, out z);
        (x, y, z) = (x + originX, y + originY, z + originZ);
        return cost + LengthCost * length;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Push(int a, int b)
    {
        if (mesh.IsHeld[a] || mesh.IsHeld[b])
        {
            return;
        }

        var cost = Cost(a, b, out _, out _, out _);
        if (cost <= (double)deviation * deviation)
        {
            queue.Push(cost, new CollapseQueue.Edge(a, b, version[a], version[b]));
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Try(int a, int b, Arena arena)
    {
        mesh.Clean(a);
        mesh.Clean(b);
        var count = Link(a, b);
        if (count < 3)
        {
            return;
        }

        Cost(a, b, out var dx, out var dy, out var dz);
        float x = (float)dx, y = (float)dy, z = (float)dz;
        if (!IsGood(a, b, count, x, y, z, arena) && !(triesEnds && (IsGoodAt(a) || IsGoodAt(b))))
        {
            return;
        }

        collapses++;
        mesh.Merge(a, b, x, y, z);
        quadrics[a].Add(in quadrics[b]);
        isOff[a] |= isOff[b];
        faceAt[a] = IsInFace(a, b) ? faceAt[a] : FlatFaces.None;
        version[a]++;
        version[b]++;
        for (var corner = mesh.First[a]; corner >= 0; corner = mesh.Next(corner))
        {
            Push(a, mesh.Corners[ChunkMesh.Turn(corner)]);
        }

        bool IsGoodAt(int end)
        {
            var p = mesh.Positions;
            (x, y, z) = (p[end * 3], p[end * 3 + 1], p[end * 3 + 2]);
            var sum = quadrics[a];
            sum.Add(in quadrics[b]);
            return sum.Error(x - originX, y - originY, z - originZ) <= (double)deviation * deviation && IsGood(a, b, count, x, y, z, arena);
        }
    }

    /// <summary>
    /// Lists the triangles that stay round a and b. Returns their number, or 0 where the collapse would break the surface:
    /// the two stars may share just the two triangles between them and those triangles' far corners.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private int Link(int a, int b)
    {
        mark++;
        int between = 0, common = 0, count = 0;
        var corners = mesh.Corners;
        for (var corner = mesh.First[a]; corner >= 0; corner = mesh.Next(corner))
        {
            int ahead = ChunkMesh.Turn(corner), p = corners[ahead], q = corners[ChunkMesh.Turn(ahead)];
            seen[p] = mark;
            seen[q] = mark;
            if (p == b || q == b)
            {
                faceBetween[between++ & 1] = mesh.FaceOf[corner / 3];
            }
            else if (count < MostTriangles)
            {
                rest[count++] = corner;
            }
            else
            {
                return 0;
            }
        }

        for (var corner = mesh.First[b]; corner >= 0; corner = mesh.Next(corner))
        {
            int ahead = ChunkMesh.Turn(corner), p = corners[ahead], q = corners[ChunkMesh.Turn(ahead)];
            common += p != a && seen[p] == mark ? 1 : 0;
            if (p == a || q == a)
            {
                continue;
            }

            if (count == MostTriangles)
            {
                return 0;
            }

            rest[count++] = corner;
        }

        return between == 2 && common == 2 ? count : 0;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private bool IsGood(int a, int b, int count, float x, float y, float z, Arena arena)
    {
        if (!IsOn(faceBetween[0], x, y, z) || !IsOn(faceBetween[1], x, y, z))
        {
            return false;
        }

        var arenaMark = arena.Mark;
        int atCentroids = EdgeCrossings.Pad(count + 1), atMiddles = EdgeCrossings.Pad(count);
        Span<float> cx = arena.Take(atCentroids), cy = arena.Take(atCentroids), cz = arena.Take(atCentroids), d = arena.Take(atCentroids);
        Span<float> mx = arena.Take(atMiddles), my = arena.Take(atMiddles), mz = arena.Take(atMiddles);
        var mayTurn = isOff[a] || isOff[b];
        var isGood = Shape(count, mayTurn, x, y, z, cx, cy, cz, mx, my, mz, out var reach);

        // Inside a flat face that is all: the same patch of the plane is cut into fewer triangles.
        if (isGood && (mayTurn || !IsInFace(a, b)))
        {
            cx[count..].Fill(x);
            cy[count..].Fill(y);
            cz[count..].Fill(z);
            mx[count..].Fill(x);
            my[count..].Fill(y);
            mz[count..].Fill(z);
            var local = solids.At(x, y, z, MathF.Sqrt(reach));
            var limit = mayTurn ? MathF.Max(deviation, Better * WorstNow(a, b, count, local, arena)) : deviation;
            isGood = IsWithin(local, limit, mx, my, mz, d[..atMiddles], arena) && IsFacing(local, limit, count, cx, cy, cz, d, arena);
        }

        arena.Release(arenaMark);
        return isGood;
    }

    /// <summary>Refuses turned triangles and slivers; fills in the points to look at. Triangles that were off may turn.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private bool Shape(
        int count, bool mayTurn, float x, float y, float z, Span<float> cx, Span<float> cy, Span<float> cz, Span<float> mx, Span<float> my, Span<float> mz, out float reach)
    {
        var positions = mesh.Positions;
        var corners = mesh.Corners;
        reach = 0;
        for (var i = 0; i < count; i++)
        {
            int corner = rest[i], ahead = ChunkMesh.Turn(corner);
            int v = corners[corner] * 3, p = corners[ahead] * 3, q = corners[ChunkMesh.Turn(ahead)] * 3;
            float px = positions[p], py = positions[p + 1], pz = positions[p + 2];
            float ex = positions[q] - px, ey = positions[q + 1] - py, ez = positions[q + 2] - pz;
            float ox = positions[v] - px, oy = positions[v + 1] - py, oz = positions[v + 2] - pz;
            float nx = x - px, ny = y - py, nz = z - pz;
            float o0 = ey * oz - ez * oy, o1 = ez * ox - ex * oz, o2 = ex * oy - ey * ox;
            float n0 = ey * nz - ez * ny, n1 = ez * nx - ex * nz, n2 = ex * ny - ey * nx;
            float old = MathF.Sqrt(o0 * o0 + o1 * o1 + o2 * o2), now = MathF.Sqrt(n0 * n0 + n1 * n1 + n2 * n2);
            if (!(now > 0) || (!mayTurn && !(o0 * n0 + o1 * n1 + o2 * n2 > LeastTurn * old * now)))
            {
                return false;
            }

            if (!IsOn(mesh.FaceOf[corner / 3], x, y, z))
            {
                return false;
            }

            float toP = nx * nx + ny * ny + nz * nz, hx = nx - ex, hy = ny - ey, hz = nz - ez;
            var longest = MathF.Max(ex * ex + ey * ey + ez * ez, MathF.Max(toP, hx * hx + hy * hy + hz * hz));
            if (now < Sliver * longest && now < SliverLoss * old)
            {
                return false;
            }

            var scale = 1 / now;
            (normals[i * 3], normals[i * 3 + 1], normals[i * 3 + 2]) = (n0 * scale, n1 * scale, n2 * scale);
            (cx[i], cy[i], cz[i]) = (px + (ex + nx) / 3, py + (ey + ny) / 3, pz + (ez + nz) / 3);
            (mx[i], my[i], mz[i]) = (px + 0.5f * nx, py + 0.5f * ny, pz + 0.5f * nz);
            reach = MathF.Max(reach, toP);
        }

        return true;
    }

    /// <summary>True where all triangles round both ends are in one flat face.</summary>
    private bool IsInFace(int a, int b) => faceAt[a] != FlatFaces.None && faceAt[a] == faceAt[b];

    private bool IsOn(int face, float x, float y, float z)
        => face == FlatFaces.None || Math.Abs(planes[face].Distance(new Vec3(x, y, z))) <= flatLimit;

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static bool IsWithin(Solid local, float limit, Span<float> x, Span<float> y, Span<float> z, Span<float> distance, Arena arena)
    {
        local.Distances(x, y, z, distance, arena);
        foreach (var d in distance)
        {
            if (!(MathF.Abs(d) <= limit))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The largest |distance| round the two vertices as they are.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private float WorstNow(int a, int b, int count, Solid local, Arena arena)
    {
        const int points = 2 * MostTriangles + 16;
        Span<float> x = arena.Take(points), y = arena.Take(points), z = arena.Take(points), distance = arena.Take(points);
        var n = 0;
        Put(At(a), x, y, z);
        Put(At(b), x, y, z);
        Put((At(a) + At(b)) * 0.5, x, y, z);
        for (var i = 0; i < count; i++)
        {
            int corner = rest[i], ahead = ChunkMesh.Turn(corner);
            Vec3 v = At(mesh.Corners[corner]), p = At(mesh.Corners[ahead]), q = At(mesh.Corners[ChunkMesh.Turn(ahead)]);
            Put((v + p) * 0.5, x, y, z);
            Put((v + p + q) / 3, x, y, z);
        }

        x[n..].Fill(x[0]);
        y[n..].Fill(y[0]);
        z[n..].Fill(z[0]);
        local.Distances(x, y, z, distance, arena);
        var worst = 0f;
        foreach (var d in distance)
        {
            worst = MathF.Max(worst, MathF.Abs(d));
        }

        return worst;

        void Put(Vec3 p, Span<float> x, Span<float> y, Span<float> z)
        {
            (x[n], y[n], z[n]) = ((float)p.X, (float)p.Y, (float)p.Z);
            n++;
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private bool IsFacing(Solid local, float limit, int count, Span<float> x, Span<float> y, Span<float> z, Span<float> distance, Arena arena)
    {
        var n = distance.Length;
        Span<float> gx = arena.Take(n), gy = arena.Take(n), gz = arena.Take(n);
        local.Gradients(x, y, z, distance, gx, gy, gz, arena);
        for (var i = 0; i <= count; i++)
        {
            if (!(MathF.Abs(distance[i]) <= limit))
            {
                return false;
            }
        }

        for (var i = 0; i < count; i++)
        {
            var along = gx[i] * normals[i * 3] + gy[i] * normals[i * 3 + 1] + gz[i] * normals[i * 3 + 2];
            if (!(along > LeastFacing * MathF.Sqrt(gx[i] * gx[i] + gy[i] * gy[i] + gz[i] * gz[i])))
            {
                return false;
            }
        }

        return true;
    }
}
