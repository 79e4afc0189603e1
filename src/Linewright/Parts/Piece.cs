using System.Collections.Immutable;
using Linewright.Layout;
using Linewright.Solids.Shapes;
using Linewright.Stones;

namespace Linewright.Parts;

/// <summary>The whole line as solids: unique parts with their counts, the stone, and the forms they were built from.</summary>
public sealed record Piece
{
    /// <summary>The numbers behind it.</summary>
    public required LineDesign Design { get; init; }

    /// <summary>The joint.</summary>
    public required HingeForm Hinge { get; init; }

    /// <summary>The link's dimensions.</summary>
    public required LinkForm Link { get; init; }

    /// <summary>The clasp's dimensions.</summary>
    public required ClaspForm Clasp { get; init; }

    /// <summary>The layout that was built.</summary>
    public required LineCandidate Layout { get; init; }

    /// <summary>Unique parts: link, box, tongue, then safety and pin where there are.</summary>
    public required ImmutableArray<Part> Parts { get; init; }

    /// <summary>The stone in the link's frame, as a solid.</summary>
    public required Solid SeatedStone { get; init; }

    /// <summary>The stone in its own frame.</summary>
    public required Stone Stone { get; init; }

    /// <summary>The part with a role, or null where this line has none.</summary>
    public Part? Find(PartRole role) => Parts.FirstOrDefault(part => part.Role == role);

    /// <summary>The part with a role.</summary>
    /// <exception cref="InvalidOperationException">This line has none.</exception>
    public Part this[PartRole role] => Find(role) ?? throw new InvalidOperationException($"this line has no {role}");
}
