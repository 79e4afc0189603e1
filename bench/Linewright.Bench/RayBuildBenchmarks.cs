using BenchmarkDotNet.Attributes;
using Linewright.Pictures.Rays;
using Linewright.Solids.Meshing;
using Linewright.Solids.Space;

namespace Linewright.Bench;

/// <summary>A tree over two million triangles on all cores, as a ratio to Embree's over the same.</summary>
/// <remarks>Needs Embree; Program leaves the class out where it is not installed.</remarks>
public class RayBuildBenchmarks
{
    private readonly Mesh mesh = RayField.MakeRing(1000);

    /// <summary>Embree's tree, its own copy of the mesh included.</summary>
    [Benchmark(Baseline = true)]
    public void Peer() => new Embree(mesh, [Pose.Identity]).Dispose();

    /// <summary>The tracer's tree.</summary>
    [Benchmark]
    public int Tree()
    {
        using var tree = WideTree.Over(mesh, 0);
        return tree.NodeCount;
    }
}
