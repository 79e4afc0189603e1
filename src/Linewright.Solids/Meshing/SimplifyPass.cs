using System.Runtime.CompilerServices;
using Linewright.Solids.Lanes;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Meshing;

/// <summary>One round of collapsing over the whole mesh, cut into cubes that are worked on side by side.</summary>
/// <remarks>
/// A cube owns the vertices all of whose triangles have their centroid in it; the others stay as they are, so that
/// no cube sees another's work. The cut depends on the mesh alone, never on the threads.
/// </remarks>
internal sealed class SimplifyPass
{
    private const int Shared = -1, Unused = -2;
    private readonly Solid solid;
    private readonly double deviation;
    private readonly double fineEdge;
    private readonly HeldMesh input;
    private readonly FlatFaces.Plane[] planes;
    private readonly int rounds;
    private readonly TriangleBuckets cubes;
    private readonly int[] ownerOf;
    private readonly int[] localOf;

    /// <param name="solid">What the mesh stands for.</param>
    /// <param name="deviation">Largest |distance| allowed, mm.</param>
    /// <param name="fineEdge">Mean edge of the mesh before any pass, mm: the size of the cubes in which the solid is cut down.</param>
    /// <param name="input">The mesh, and which vertices are held fast.</param>
    /// <param name="planes">The planes of its flat faces.</param>
    /// <param name="cubes">The cut.</param>
    /// <param name="rounds">How often each cube's edges are looked at.</param>
    public SimplifyPass(Solid solid, double deviation, double fineEdge, HeldMesh input, FlatFaces.Plane[] planes, TriangleBuckets cubes, int rounds)
    {
        this.solid = solid;
        this.deviation = deviation;
        this.fineEdge = fineEdge;
        this.input = input;
        this.planes = planes;
        this.rounds = rounds;
        this.cubes = cubes;
        ownerOf = new int[input.IsHeld.Length];
        localOf = new int[input.IsHeld.Length];
        Array.Fill(ownerOf, Unused);
        for (var cube = 0; cube < cubes.Count; cube++)
        {
            foreach (var t in cubes[cube])
            {
                for (var k = 0; k < 3; k++)
                {
                    ref var owner = ref ownerOf[input.Triangles[t * 3 + k]];
                    owner = owner == Unused || owner == cube ? cube : Shared;
                }
            }
        }
    }

    public HeldMesh Run(Crew crew)
    {
        var pieces = new Piece?[cubes.Count];
        crew.Run(cubes.Count, (i, arena) => pieces[i] = cubes[i].Length > 0 ? Work(i, arena) : null);
        return Join(pieces);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private Piece Work(int cube, Arena arena)
    {
        // Number the cube's vertices; those that other cubes see too are looked up by name.
        var shared = new Dictionary<int, int>();
        var globals = new List<int>();
        var triangles = cubes[cube];
        var corners = new int[triangles.Length * 3];
        var faceOf = new int[triangles.Length];
        for (var i = 0; i < corners.Length; i++)
        {
            faceOf[i / 3] = input.FaceOf[triangles[i / 3]];
            var v = input.Triangles[triangles[i / 3] * 3 + i % 3];
            corners[i] = ownerOf[v] == cube ? Owned(v) : Other(v);
        }

        var positions = new float[globals.Count * 3];
        var isHeld = new bool[globals.Count];
        var box = Bounds.Empty;
        for (var i = 0; i < globals.Count; i++)
        {
            var v = globals[i];
            input.Positions.AsSpan(v * 3, 3).CopyTo(positions.AsSpan(i * 3));
            isHeld[i] = ownerOf[v] == Shared || input.IsHeld[v];
            var p = new Vec3(positions[i * 3], positions[i * 3 + 1], positions[i * 3 + 2]);
            box = new Bounds(box.Low.Min(p), box.High.Max(p));
        }

        var mesh = new ChunkMesh(positions, corners, isHeld, faceOf);
        var solids = new LocalSolids(solid, box.Grown(fineEdge), 8 * fineEdge);
        new EdgeCollapser(mesh, solids, planes, deviation).Run(rounds, arena);
        return new Piece(mesh, globals);

        int Owned(int v)
        {
            // localOf belongs to the owner alone; a number that does not lead back to v is stale.
            var local = localOf[v];
            if (local < globals.Count && globals[local] == v)
            {
                return local;
            }

            localOf[v] = globals.Count;
            globals.Add(v);
            return globals.Count - 1;
        }

        int Other(int v)
        {
            if (!shared.TryGetValue(v, out var local))
            {
                local = globals.Count;
                shared.Add(v, local);
                globals.Add(v);
            }

            return local;
        }
    }

    private HeldMesh Join(Piece?[] pieces)
    {
        var positions = new List<float>();
        var triangles = new List<int>();
        var isHeld = new List<bool>();
        var faceOf = new List<int>();
        var sharedAs = new Dictionary<int, int>();
        foreach (var piece in pieces)
        {
            if (piece is null)
            {
                continue;
            }

            var numbers = new int[piece.Globals.Count];
            Array.Fill(numbers, -1);
            var mesh = piece.Mesh;
            for (var t = 0; t < mesh.IsDead.Length; t++)
            {
                if (mesh.IsDead[t])
                {
                    continue;
                }

                faceOf.Add(mesh.FaceOf[t]);
                for (var k = 0; k < 3; k++)
                {
                    triangles.Add(Number(piece, numbers, mesh.Corners[t * 3 + k]));
                }
            }
        }

        return new HeldMesh([.. positions], [.. triangles], [.. isHeld], [.. faceOf]);

        int Number(Piece piece, int[] numbers, int local)
        {
            var global = piece.Globals[local];
            var isShared = ownerOf[global] == Shared;
            if (numbers[local] < 0 && !(isShared && sharedAs.TryGetValue(global, out numbers[local])))
            {
                numbers[local] = isHeld.Count;
                positions.AddRange(piece.Mesh.Positions.AsSpan(local * 3, 3));
                isHeld.Add(input.IsHeld[global]);
                if (isShared)
                {
                    sharedAs.Add(global, numbers[local]);
                }
            }

            return numbers[local];
        }
    }

    private sealed record Piece(ChunkMesh Mesh, List<int> Globals);
}
