using System.Collections.Immutable;
using Linewright.Parts;
using Linewright.Solids.Space;

namespace Linewright.Assembly;

/// <summary>Pieces of a line in order, each holding the next one's bar in its eye.</summary>
/// <param name="Pieces">Along the line from bar to eye.</param>
/// <param name="IsClosed">Whether the last holds the first.</param>
public sealed record RestingChain(ImmutableArray<RestingPiece> Pieces, bool IsClosed)
{
    /// <summary>Index pairs of neighbours: the one with the eye, the one with the bar.</summary>
    public IEnumerable<(int Eye, int Bar)> Neighbours()
    {
        for (var i = 1; i < Pieces.Length; i++)
        {
            yield return (i - 1, i);
        }

        if (IsClosed)
        {
            yield return (Pieces.Length - 1, 0);
        }
    }

    /// <summary>How each piece lies on the one before, in the order of <see cref="Neighbours"/>.</summary>
    public ImmutableArray<JointLie> Lies(Piece piece)
        => [.. Neighbours().Select(pair => JointLie.Of(
            Pieces[pair.Eye].Pose, EyeCentre(piece, Pieces[pair.Eye].Kind), Pieces[pair.Bar].Pose, BarCentre(piece, Pieces[pair.Bar].Kind)))];

    /// <summary>The hinges as joints to settle by; bodies count from a first index.</summary>
    public IEnumerable<RestJoint> Joints(Piece piece, JointFreedom freedom)
        => Neighbours().Select(pair => new RestJoint(
            pair.Eye, EyeCentre(piece, Pieces[pair.Eye].Kind), pair.Bar, BarCentre(piece, Pieces[pair.Bar].Kind), freedom, piece.Hinge.BarMm / 2));

    /// <summary>The middle of a piece's eye in its frame, mm.</summary>
    public static Vec3 EyeCentre(Piece piece, RestingKind kind)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return kind == RestingKind.Link ? piece.Link.EyeCentre : new Vec3(piece.Clasp.LengthMm - piece.Hinge.PlayMm, 0, piece.Hinge.HeightMm);
    }

    /// <summary>The middle of a piece's bar in its frame, mm.</summary>
    public static Vec3 BarCentre(Piece piece, RestingKind kind)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return kind == RestingKind.Link ? piece.Link.BarAxis : new Vec3(0, 0, piece.Hinge.HeightMm);
    }
}
