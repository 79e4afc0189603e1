using Linewright.Solids.Shapes;

namespace Linewright.Parts;

/// <summary>A named region of a part, with the least wall it may have once finished.</summary>
/// <param name="Name">In the trade's words: claw, base rail, eye, ...</param>
/// <param name="Solid">The region before anything is cut from it, in the part's frame, as set.</param>
/// <param name="WallLimitMm">Least wall, finished.</param>
/// <param name="Source">Where the limit comes from.</param>
public sealed record Feature(string Name, Solid Solid, double WallLimitMm, string Source);
