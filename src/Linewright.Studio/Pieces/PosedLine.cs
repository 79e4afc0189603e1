using System.Collections.Immutable;
using Linewright.Assembly;
using Linewright.Parts;
using Linewright.Solids.Space;

namespace Linewright.Studio.Pieces;

/// <summary>Where every part and stone lies in one pose of the view; a role that the pose leaves out has no placements.</summary>
/// <param name="Name">flat, round, wrist, open, apart, link, joint, clasp.</param>
/// <param name="Parts">Placements by role, along the line.</param>
/// <param name="Stones">From the stone's own frame.</param>
public sealed record PosedLine(string Name, ImmutableDictionary<PartRole, ImmutableArray<Pose>> Parts, ImmutableArray<Pose> Stones)
{
    /// <summary>The placements of one role, none where the pose leaves it out.</summary>
    public ImmutableArray<Pose> Of(PartRole role) => Parts.GetValueOrDefault(role, []);

    /// <summary>A pose of the whole line.</summary>
    public static PosedLine Of(string name, LineAssembly line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return new PosedLine(name, Enum.GetValues<PartRole>().ToImmutableDictionary(role => role, line.Of), line.Stones);
    }
}
