using BenchmarkDotNet.Attributes;
using Linewright.Solids.Meshing;
using Linewright.Solids.Shapes;

namespace Linewright.Bench;

/// <summary>Meshing a four-claw link: what a slider, a check and a casting file wait for.</summary>
[MemoryDiagnoser]
public class MeshingBenchmarks
{
    private readonly Solid link = FourClawLink.Build();
    private readonly MeshSettings fine = new(0.025, 0.01, false);
    private Mesh fineMesh = new([], []);
    private Mesh castingMesh = new([], []);

    [GlobalSetup]
    public void Mesh()
    {
        fineMesh = Mesher.Run(link, fine).Mesh;
        var casting = Mesher.Run(link, MeshSettings.Production);
        castingMesh = casting.Mesh;
        Console.WriteLine(FormattableString.Invariant(
            $"// fine {casting.FineTriangles} triangles, casting {castingMesh.TriangleCount}, {1000 * casting.CertifiedDeviationMm:0.0} um, {casting.Status}"));
    }

    /// <summary>80 um cells.</summary>
    [Benchmark]
    public MeshOutcome Preview() => Mesher.Run(link, MeshSettings.Preview);

    /// <summary>25 um cells, certified.</summary>
    [Benchmark]
    public MeshOutcome Fine() => Mesher.Run(link, fine);

    /// <summary>25 um cells, simplified within 5 um, free of triangles that meet.</summary>
    [Benchmark]
    public MeshOutcome Production() => Mesher.Run(link, MeshSettings.Production);

    /// <summary>The simplifier alone.</summary>
    [Benchmark]
    public SimplifyOutcome Simplify() => Simplifier.Run(link, fineMesh, 0.005);

    /// <summary>The certificate alone, on the fine mesh.</summary>
    [Benchmark]
    public Certificate Certify() => Certificate.Measure(link, fineMesh);

    /// <summary>The search for triangles that meet, on the casting mesh.</summary>
    [Benchmark]
    public int FindIntersections() => MeshIntersections.Find(castingMesh).Count;
}
