using System.Collections.Immutable;
using BenchmarkDotNet.Attributes;
using Linewright.Assembly;
using Linewright.Checks;
using Linewright.Making;
using Linewright.Parts;
using Linewright.Solids.Meshing;

namespace Linewright.Bench;

/// <summary>A whole piece: what plan, weigh and check spend their time on once the program is warm.</summary>
[MemoryDiagnoser]
public class PieceBenchmarks
{
    private Piece piece = null!;
    private ImmutableArray<MeshOutcome> asSet;

    /// <summary>Diameter of its stones, mm.</summary>
    [Params(3.0)]
    public double StoneMm { get; set; }

    [GlobalSetup]
    public void Build()
    {
        piece = Bracelet.Of(StoneMm);
        asSet = Workshop.Make(piece).Model.AsSet;
        foreach (var (part, mesh) in piece.Parts.Zip(asSet))
        {
            Console.WriteLine(FormattableString.Invariant(
                $"// {part.Name}: {mesh.FineTriangles} triangles, {mesh.Mesh.TriangleCount} kept, {1000 * mesh.CertifiedDeviationMm:0.0} um, {mesh.Status}"));
        }
    }

    /// <summary>The layout and the solids.</summary>
    [Benchmark]
    public Piece Plan() => Bracelet.Of(StoneMm);

    /// <summary>Every part as set and as cast.</summary>
    [Benchmark]
    public MadePiece MeshAllParts() => Workshop.Make(piece);

    /// <summary>All checks, on a model that nobody has measured yet.</summary>
    [Benchmark]
    public IReadOnlyList<Finding> Check() => PieceChecks.Run(PieceModel.Of(piece, asSet));
}
