using System.Collections.Immutable;
using Linewright.Layout;
using Linewright.Parts;
using Linewright.Solids.Space;

namespace Linewright.Assembly;

/// <summary>All parts and stones of the line in one position. Links are rigid; only hinges turn.</summary>
public sealed record LineAssembly
{
    /// <summary>Links along the line, then box, tongue, safety, then pins.</summary>
    public required ImmutableArray<PlacedPart> Parts { get; init; }

    /// <summary>Each stone, from its own frame (origin at half the girdle) to the line's.</summary>
    public required ImmutableArray<Pose> Stones { get; init; }

    /// <summary>The placements with one role, along the line.</summary>
    public ImmutableArray<Pose> Of(PartRole role) => [.. Parts.Where(part => part.Role == role).Select(part => part.Pose)];

    /// <summary>Pulled taut on a table, clasp after the last link.</summary>
    public static LineAssembly Flat(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return Place(piece, FlatFit.Solve(piece.Layout.Chain).Placements);
    }

    /// <summary>Closed around the wrist that the brief describes; round where the line is too short for that form.</summary>
    public static LineAssembly Closed(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var wrist = piece.Design.Brief.Wrist;
        var fit = WristFit.Solve(piece.Layout.Chain, wrist.DepthRatio, wrist.Exponent);
        fit = fit.Fits ? fit : WristFit.Solve(piece.Layout.Chain, 1, 2);
        return fit.Fits
            ? Place(piece, fit.Fit.Placements)
            : throw new ArgumentException($"the line does not close: {fit.Reason}", nameof(piece));
    }

    /// <summary>Placed as a layout says: links in order, then the clasp.</summary>
    public static LineAssembly Place(Piece piece, ImmutableArray<LinkPlacement> placements)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var links = placements.Where(place => !place.IsClasp).Select(place => place.Pose).ToList();

        // The layout places a clasp by its middle, the parts by the box's bar.
        var clasp = Pose.Move(-piece.Clasp.LengthMm / 2, 0, 0).Then(placements.First(place => place.IsClasp).Pose);
        var parts = ImmutableArray.CreateBuilder<PlacedPart>();
        parts.AddRange(links.Select((pose, index) => new PlacedPart(PartRole.Link, index, pose)));
        foreach (var role in (PartRole[])[PartRole.Box, PartRole.Tongue, PartRole.Safety])
        {
            if (piece.Find(role) is not null)
            {
                parts.Add(new PlacedPart(role, 0, clasp));
            }
        }

        if (piece.Find(PartRole.Pin) is not null)
        {
            var bars = links.Select(pose => Pose.Move(piece.Link.BarAxis).Then(pose))
                .Append(Pose.Move(0, 0, piece.Hinge.HeightMm).Then(clasp));
            parts.AddRange(bars.Select((pose, index) => new PlacedPart(PartRole.Pin, index, pose)));
        }

        var seat = Pose.Move(0, 0, piece.Link.GirdleHeightMm);
        return new LineAssembly
        {
            Parts = parts.ToImmutable(),
            Stones = [.. links.Select(pose => seat.Then(pose))],
        };
    }
}
