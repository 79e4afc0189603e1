using System.Collections.Immutable;
using Linewright.Parts;
using Linewright.Solids.Measures;
using Linewright.Solids.Meshing;
using Linewright.Solids.Space;

namespace Linewright.Assembly;

/// <summary>The piece as it is worn, meshed and assembled: what checks measure and pictures show.</summary>
/// <remarks>Immutable but for values computed on first use, which is safe from several threads.</remarks>
public sealed class PieceModel
{
    // Probes this close find what a setter's loupe would. 0.1 mm keeps a pose of two links under a millisecond.
    private const double ProbeSpacingMm = 0.1;

    private readonly Lazy<LineAssembly> flat;
    private readonly Lazy<LineAssembly> closed;
    private readonly Lazy<ImmutableArray<Body>> linkBodies;

    private PieceModel(Piece piece, ImmutableArray<MeshOutcome> asSet)
    {
        Piece = piece;
        AsSet = asSet;
        flat = new Lazy<LineAssembly>(() => LineAssembly.Flat(piece));
        closed = new Lazy<LineAssembly>(() => LineAssembly.Closed(piece));
        linkBodies = new Lazy<ImmutableArray<Body>>(LinkAndStone);
    }

    /// <summary>The solids.</summary>
    public Piece Piece { get; }

    /// <summary>The mesh of each part as set, in the order of <see cref="Piece.Parts"/>.</summary>
    public ImmutableArray<MeshOutcome> AsSet { get; }

    /// <summary>The line pulled taut on a table.</summary>
    public LineAssembly Flat => flat.Value;

    /// <summary>The line closed round the wrist.</summary>
    public LineAssembly Closed => closed.Value;

    /// <summary>A link's metal and its stone as bodies to feel with, in the link's frame, named "link" and "stone".</summary>
    public ImmutableArray<Body> LinkBodies => linkBodies.Value;

    /// <summary>Meshes the parts as set.</summary>
    public static PieceModel Build(Piece piece, IProgress<int>? done = null, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var solids = ImmutableArray.CreateRange(piece.Parts, part => part.AsSet);
        return new PieceModel(piece, PartMeshes.Run(solids, piece.Design.Brief.Process.MeshDeviationUm / 1000, done, stop));
    }

    /// <summary>Takes meshes that were made elsewhere, one a part in the order of the parts.</summary>
    /// <exception cref="ArgumentException">There are more or fewer meshes than parts.</exception>
    public static PieceModel Of(Piece piece, ImmutableArray<MeshOutcome> asSet)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return asSet.Length == piece.Parts.Length
            ? new PieceModel(piece, asSet)
            : throw new ArgumentException($"{piece.Parts.Length} parts, {asSet.Length} meshes", nameof(asSet));
    }

    /// <summary>The mesh of a part as set.</summary>
    public MeshOutcome MeshOf(PartRole role) => AsSet[Piece.Parts.IndexOf(Piece[role])];

    /// <summary>A part's metal as a body to feel with, in the part's frame.</summary>
    /// <param name="role">Which part.</param>
    /// <param name="where">Which part of its surface; all where null.</param>
    public Body BodyOf(PartRole role, Func<Vec3, bool>? where = null)
    {
        var part = Piece[role];
        return new Body(part.Name, part.AsSet, ProbeSurface.Of(part.AsSet, MeshOf(role).Mesh, ProbeSpacingMm, where));
    }

    private ImmutableArray<Body> LinkAndStone()
    {
        var seat = Pose.Move(0, 0, Piece.Link.GirdleHeightMm);
        var stone = Piece.Stone.Body.ToMesh().Moved(seat);
        return
        [
            BodyOf(PartRole.Link),
            new Body("stone", Piece.SeatedStone, ProbeSurface.Of(Piece.SeatedStone, stone, ProbeSpacingMm)),
        ];
    }
}
