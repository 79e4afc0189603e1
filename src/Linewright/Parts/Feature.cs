using Linewright.Solids.Shapes;

namespace Linewright.Parts;

/// <summary>A named region of a part, with the least wall it may have once finished, and how it comes by its thickness.</summary>
/// <param name="Name">In the trade's words: claw, base rail, eye, ...</param>
/// <param name="Solid">The region before anything is cut from it, in the part's frame, as set.</param>
/// <param name="WallLimitMm">Least wall, finished.</param>
/// <param name="Source">Where the limit comes from.</param>
public sealed record Feature(string Name, Solid Solid, double WallLimitMm, string Source)
{
    /// <summary>Who gives it its thickness.</summary>
    public MadeBy Made { get; init; } = MadeBy.Casting;

    /// <summary>How many of the two faces of its wall are polished; the others are bores, bearings, seats or the inside of the box.</summary>
    public int PolishedFaces { get; init; } = 2;
}
