using System.Collections.Immutable;
using Linewright.Solids.Meshing;
using Linewright.Solids.Polyhedra;
using Linewright.Solids.Space;

namespace Linewright.Pictures.Rays;

/// <summary>Owns the trees, planes and normals of a scene; every shape is kept once however often it stands.</summary>
internal sealed unsafe class ThingForest : IDisposable
{
    private readonly List<IDisposable> owned = [];

    public ThingForest(
        IReadOnlyList<Mesh> shapes,
        IReadOnlyList<(int Shape, Pose Place)> meshes,
        IReadOnlyList<ConvexPolyhedron> bodies,
        IReadOnlyList<(int Body, Pose Place)> stones,
        int threads)
    {
        var boxes = new List<(Float3 Low, Float3 High)>();
        ImmutableArray<WideTree> trees = [.. shapes.Select(shape => WideTree.Over(shape, threads))];
        ImmutableArray<AlignedBlock<TriangleNormals>> normals = [.. shapes.Select(shape => Keep(new AlignedBlock<TriangleNormals>(SmoothNormals.Of(shape))))];
        owned.AddRange(trees);
        var placedMeshes = new PlacedMesh[meshes.Count];
        for (var i = 0; i < meshes.Count; i++)
        {
            var (shape, place) = meshes[i];
            placedMeshes[i] = new PlacedMesh
            {
                Frame = new Turn(place),
                Into = new WideTurn(place),
                Nodes = trees[shape].Nodes,
                Blocks = trees[shape].Blocks,
                Normals = normals[shape].Pointer,
            };
            boxes.Add(Around(Around(shapes[shape], place)));
        }

        ImmutableArray<FacetBody> faceted = [.. bodies.Select(body => new FacetBody(body))];
        var planes = faceted.Select(body => Keep(new AlignedBlock<float>(body.Numbers))).ToList();
        var placedBodies = new PlacedBody[stones.Count];
        for (var i = 0; i < stones.Count; i++)
        {
            var (body, place) = stones[i];
            var frame = Pose.Move(faceted[body].Middle).Then(place);
            placedBodies[i] = new PlacedBody
            {
                Frame = new Turn(frame),
                Planes = faceted[body].At(planes[body].Pointer),
            };
            boxes.Add(Around(place.Box(bodies[body].Bounds)));
        }

        Over = WideTree.Over(boxes);
        owned.Add(Over);
        (Shapes, Normals, Bodies) = (trees, normals, faceted);
        ShapeOf = [.. meshes.Select(mesh => mesh.Shape)];
        BodyOf = [.. stones.Select(stone => stone.Body)];
        Tree = new ThingTree
        {
            Nodes = Over.Nodes,
            Meshes = Keep(new AlignedBlock<PlacedMesh>(placedMeshes)).Pointer,
            Bodies = Keep(new AlignedBlock<PlacedBody>(placedBodies)).Pointer,
            MeshCount = meshes.Count,
        };
    }

    /// <summary>One tree a shape.</summary>
    public ImmutableArray<WideTree> Shapes { get; }

    /// <summary>Normals of each shape's triangles.</summary>
    public ImmutableArray<AlignedBlock<TriangleNormals>> Normals { get; }

    /// <summary>Each convex body once.</summary>
    public ImmutableArray<FacetBody> Bodies { get; }

    /// <summary>The shape of each metal part.</summary>
    public ImmutableArray<int> ShapeOf { get; }

    /// <summary>The body of each stone.</summary>
    public ImmutableArray<int> BodyOf { get; }

    /// <summary>Over all things.</summary>
    public WideTree Over { get; }

    /// <summary>For the kernel; valid as long as this object is.</summary>
    public ThingTree Tree { get; }

    /// <summary>Gives the memory back.</summary>
    public void Dispose() => owned.ForEach(thing => thing.Dispose());

    private AlignedBlock<T> Keep<T>(AlignedBlock<T> block)
        where T : unmanaged
    {
        owned.Add(block);
        return block;
    }

    /// <summary>Box around a mesh where it stands, from its corners: the turned box of a turned ring is far larger, and rays would look into it in vain.</summary>
    private static Bounds Around(Mesh shape, Pose place)
    {
        var box = Bounds.Empty;
        for (var i = 0; i < shape.VertexCount; i++)
        {
            var corner = place.Point(shape.Vertex(i));
            box = box.Join(new Bounds(corner, corner));
        }

        return box;
    }

    // A hair wider than it is, against rounding on the way into the thing's frame.
    private static (Float3 Low, Float3 High) Around(Bounds box)
    {
        var hair = new Vec3(1, 1, 1) * (1e-5 * (1 + Math.Max(box.Low.Length, box.High.Length)));
        return (new Float3(box.Low - hair), new Float3(box.High + hair));
    }
}
