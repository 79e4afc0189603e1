using System.Collections.Immutable;
using Linewright.Parts;
using Linewright.Solids.Outlines;
using Linewright.Solids.Space;
using Linewright.Stones;

namespace Linewright.Sheets;

/// <summary>The parts and stones of a piece as bodies to draw, each prepared once.</summary>
internal sealed class SheetBodies
{
    /// <summary>The tag of every stone's lines; a part's is its place in the piece, and a hundred more for the second of two.</summary>
    public const int StoneTag = 99;

    // Facets of a brilliant bend by 3 degrees and more; the flats that stand for its girdle are round.
    private const double FacetCrease = 2 * Math.PI / 180;

    // The edges of the table and of the girdle bend by more than this, those between facets of the crown by less. Calculated.
    private const double PlainCrease = 21 * Math.PI / 180;

    private readonly Piece piece;
    private readonly ImmutableArray<OutlineBody> bodies;
    private readonly OutlineBody stone;
    private readonly OutlineBody plainStone;
    private readonly Pose seat;

    public SheetBodies(Piece piece, ImmutableArray<OutlineBody> bodies)
    {
        (this.piece, this.bodies) = (piece, bodies);
        Settings = OutlineSettings.For(piece.Design.Brief.Process.MeshDeviationUm / 1000);
        stone = StoneBody(piece.Stone, FacetCrease);
        plainStone = StoneBody(piece.Stone, PlainCrease);
        seat = Pose.Move(0, 0, piece.Link.GirdleHeightMm);
    }

    /// <summary>How closely views are drawn: as closely as the meshes are true.</summary>
    public OutlineSettings Settings { get; }

    /// <summary>A part where it stands.</summary>
    public PlacedBody Part(PartRole role, Pose pose, int tagBase = 0)
    {
        var index = piece.Parts.IndexOf(piece[role]);
        return new PlacedBody(bodies[index], pose, tagBase + index);
    }

    /// <summary>A link with its stone, and the pin at its own bar where the joints are pinned.</summary>
    /// <param name="pose">From the link's frame.</param>
    /// <param name="tagBase">Added to the tags.</param>
    /// <param name="isPlain">Whether the stone shows only its table and girdle.</param>
    public IEnumerable<PlacedBody> Link(Pose pose, int tagBase = 0, bool isPlain = false)
    {
        yield return Part(PartRole.Link, pose, tagBase);
        yield return new PlacedBody(isPlain ? plainStone : stone, seat.Then(pose), tagBase + StoneTag);
        if (piece.Find(PartRole.Pin) is not null)
        {
            yield return Part(PartRole.Pin, Pose.Move(piece.Link.BarAxis).Then(pose), tagBase);
        }
    }

    /// <summary>The clasp, closed, with the pin at its box's bar where the joints are pinned.</summary>
    /// <param name="pose">From the clasp's frame: origin on the box's bar axis at the skin.</param>
    /// <param name="tagBase">Added to the tags.</param>
    public IEnumerable<PlacedBody> Clasp(Pose pose, int tagBase = 0)
    {
        foreach (var role in (PartRole[])[PartRole.Box, PartRole.Tongue, PartRole.Safety])
        {
            if (piece.Find(role) is not null)
            {
                yield return Part(role, pose, tagBase);
            }
        }

        if (piece.Find(PartRole.Pin) is not null)
        {
            yield return Part(PartRole.Pin, Pose.Move(0, 0, piece.Hinge.HeightMm).Then(pose), tagBase);
        }
    }

    /// <summary>Whether a line belongs to a stone.</summary>
    public static bool IsStone(int tag) => tag % 100 == StoneTag;

    private static OutlineBody StoneBody(Stone stone, double crease)
    {
        List<float> positions = [], normals = [];
        void Corner(Vec3 p, Vec3 normal)
        {
            positions.AddRange([(float)p.X, (float)p.Y, (float)p.Z]);
            normals.AddRange([(float)normal.X, (float)normal.Y, (float)normal.Z]);
        }

        for (var i = 0; i < stone.Body.Faces.Length; i++)
        {
            var face = stone.Body.Faces[i];
            var isGirdle = stone.FacetKinds[i] == FacetKind.Girdle;
            for (var k = 2; k < face.Loop.Length; k++)
            {
                foreach (var vertex in (int[])[face.Loop[0], face.Loop[k - 1], face.Loop[k]])
                {
                    var p = stone.Body.Vertices[vertex];
                    Corner(p, isGirdle ? new Vec3(p.X, p.Y, 0).Normalised() : face.Plane.Normal);
                }
            }
        }

        return OutlineBody.Of(positions, normals, [.. Enumerable.Range(0, positions.Count / 3)], crease);
    }
}
