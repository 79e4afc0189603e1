using System.Collections.Immutable;
using Linewright.Parts;
using Linewright.Solids.Space;

namespace Linewright.Assembly;

/// <summary>A line, or a part of it, at rest on level ground at z = 0.</summary>
/// <param name="Name">draped, closed, clasp, link, flat.</param>
/// <param name="Chains">One chain; two where the clasp stands open in the middle.</param>
/// <param name="Safety">The safety where the box and the tongue lie apart, in the picture's frame; null where it stays with a closed clasp or there is none.</param>
/// <param name="Bend">The tightest bend that the line follows on the ground, mm; infinite where it lies straight.</param>
public sealed record RestingLine(string Name, ImmutableArray<RestingChain> Chains, Pose? Safety, double Bend)
{
    /// <summary>All pieces.</summary>
    public IEnumerable<RestingPiece> Pieces => Chains.SelectMany(chain => chain.Pieces);

    /// <summary>Where every part and stone lies.</summary>
    public LineAssembly Parts(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var parts = ImmutableArray.CreateBuilder<PlacedPart>();
        var seat = Pose.Move(0, 0, piece.Link.GirdleHeightMm);
        var stones = ImmutableArray.CreateBuilder<Pose>();
        foreach (var at in Pieces.OrderBy(at => at.Kind).ThenBy(at => at.Index))
        {
            foreach (var role in Roles(at.Kind))
            {
                if (piece.Find(role) is not null)
                {
                    parts.Add(new PlacedPart(role, at.Index, role == PartRole.Safety && Safety is { } hangs ? hangs : at.Pose));
                }
            }

            if (at.Kind == RestingKind.Link)
            {
                stones.Add(seat.Then(at.Pose));
            }
        }

        if (piece.Find(PartRole.Pin) is not null)
        {
            var bars = Pieces.Where(at => at.Kind != RestingKind.Tongue)
                .Select(at => Pose.Move(RestingChain.BarCentre(piece, at.Kind)).Then(at.Pose));
            parts.AddRange(bars.Select((pose, index) => new PlacedPart(PartRole.Pin, index, pose)));
        }

        return new LineAssembly { Parts = parts.ToImmutable(), Stones = stones.ToImmutable() };
    }

    private static PartRole[] Roles(RestingKind kind) => kind switch
    {
        RestingKind.Link => [PartRole.Link],
        RestingKind.Clasp => [PartRole.Box, PartRole.Tongue, PartRole.Safety],
        RestingKind.Box => [PartRole.Box, PartRole.Safety],
        _ => [PartRole.Tongue],
    };
}
