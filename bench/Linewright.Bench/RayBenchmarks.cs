using BenchmarkDotNet.Attributes;

namespace Linewright.Bench;

/// <summary>Rays through forty parts of 50,000 triangles: the tracer's tree, as a ratio to Embree on the same rays.</summary>
/// <remarks>Figures are per ray. Needs Embree; Program leaves the class out where it is not installed.</remarks>
public class RayBenchmarks : IDisposable
{
    private const int Rays = 100_000;

    private RayField field = null!;
    private Embree embree = null!;
    private TestRay[] rays = [];

    /// <summary>Which rays.</summary>
    [Params(RayField.CoherentRays, RayField.BouncedRays, RayField.RaysFromAnywhere)]
    public string Kind { get; set; } = "";

    [GlobalSetup]
    public void Build()
    {
        field = new RayField(4 * Rays);
        embree = new Embree(field.Ring, field.Places);
        rays = field.Kinds[Kind][..Rays];
    }

    [GlobalCleanup]
    public void Dispose()
    {
        embree.Dispose();
        field.Dispose();
        GC.SuppressFinalize(this);
    }

    /// <summary>Embree's rtcIntersect1.</summary>
    [Benchmark(Baseline = true, OperationsPerInvoke = Rays)]
    public float Peer()
    {
        var sum = 0f;
        foreach (ref readonly var ray in rays.AsSpan())
        {
            sum += embree.Nearest(ray);
        }

        return sum;
    }

    /// <summary>The tracer's tree.</summary>
    [Benchmark(OperationsPerInvoke = Rays)]
    public float Tree()
    {
        var tree = field.Tree;
        var sum = 0f;
        foreach (ref readonly var ray in rays.AsSpan())
        {
            sum += tree.Nearest(ray.Origin, ray.Direction, 1e30f, -1, false).Distance;
        }

        return sum;
    }
}
