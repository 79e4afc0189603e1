using ILGPU;
using ILGPU.Runtime;
using Linewright.Pictures.Rays;
using Linewright.Pictures.Transport;

namespace Linewright.Pictures.Gpu;

/// <summary>A compiled scene copied into a card's memory. Owns the buffers.</summary>
internal sealed unsafe class CardScene : IDisposable
{
    private readonly Accelerator accelerator;
    private readonly List<IDisposable> owned = [];

    public CardScene(Accelerator accelerator, CompiledScene scene)
    {
        this.accelerator = accelerator;
        var forest = scene.Forest;
        var trees = new CardTrees();
        var roots = forest.Shapes.Select(trees.Add).ToList();
        var root = trees.Add(forest.Over);

        var firstNormal = new int[forest.Normals.Length];
        for (var i = 1; i < firstNormal.Length; i++)
        {
            firstNormal[i] = firstNormal[i - 1] + (int)forest.Normals[i - 1].Count;
        }

        var planes = new List<Float4>();
        var firstPlane = forest.Bodies.Select(body =>
        {
            var first = planes.Count;
            for (var i = 0; i < body.Count; i++)
            {
                planes.Add(new Float4(body.Numbers[i], body.Numbers[body.Padded + i], body.Numbers[2 * body.Padded + i], body.Numbers[3 * body.Padded + i]));
            }

            while (planes.Count % CardWorld.PlanesAtOnce != 0)
            {
                planes.Add(CardWorld.NoPlane);
            }

            return first;
        }).ToList();

        var things = new List<CardThing>();
        for (var i = 0; i < forest.ShapeOf.Length; i++)
        {
            var shape = forest.ShapeOf[i];
            things.Add(new CardThing { Frame = forest.Tree.Meshes[i].Frame, First = roots[shape], Second = firstNormal[shape] });
        }

        for (var i = 0; i < forest.BodyOf.Length; i++)
        {
            var body = forest.BodyOf[i];
            things.Add(new CardThing
            {
                Frame = forest.Tree.Bodies[i].Frame,
                First = firstPlane[body],
                Second = forest.Bodies[body].Count,
                Radius = forest.Bodies[body].Radius,
            });
        }

        var world = scene.World;
        var record = scene.Record;
        World = new CardWorld
        {
            Nodes = Send<CardNode>(trees.Nodes),
            Triangles = Send<CardTriangle>(trees.Triangles),
            NormalRows = Send<TriangleNormals>([.. forest.Normals.SelectMany(block => block.Span.ToArray())]),
            Things = Send<CardThing>([.. things]),
            Planes = Send<Float4>([.. planes]),
            Metals = Send(new ReadOnlySpan<MetalRecord>(world.Metals, record.MetalCount)),
            Stones = Send(new ReadOnlySpan<StoneRecord>(world.Stones, forest.BodyOf.Length)),
            Lamps = Send(new ReadOnlySpan<LampRecord>(world.LampRows, record.LampCount)),
            Strips = Send(new ReadOnlySpan<StripRecord>(world.Strips, record.Sky.StripCount)),
            Cells = Send(new ReadOnlySpan<SkyCell>(world.Cells, SkyRecord.Side * SkyRecord.Side)),
            Waves = Send(new ReadOnlySpan<WaveBin>(world.Waves, WaveBin.Count)),
            Curves = Send(new ReadOnlySpan<float>(world.CurveRows, scene.CurveCount)),
            Albedos = Send(new ReadOnlySpan<float>(world.Albedos, scene.AlbedoCount)),
            Sobol = Send(new ReadOnlySpan<uint>(world.Sobol, SampleStream.Even * 32)),
            Root = root,
            MetalCount = record.MetalCount,
        };
        GC.KeepAlive(scene);
    }

    /// <summary>For the kernel; valid as long as this object is.</summary>
    public CardWorld World { get; }

    /// <summary>Gives the card's memory back.</summary>
    public void Dispose() => owned.ForEach(buffer => buffer.Dispose());

    private ArrayView<T> Send<T>(ReadOnlySpan<T> rows)
        where T : unmanaged
    {
        // A buffer cannot be empty; a row that nobody reads can.
        var buffer = accelerator.Allocate1D<T>(Math.Max(1, rows.Length));
        owned.Add(buffer);
        if (!rows.IsEmpty)
        {
            buffer.CopyFromCPU(rows.ToArray());
        }

        return buffer.View;
    }
}
