using Linewright.Parts;
using Linewright.Solids.Meshing;

namespace Linewright.Casting;

/// <summary>What tells the faces of a part apart: the part with an allowance, meshed as cast.</summary>
/// <param name="Part">The part, or the same drawn with an allowance where it has none.</param>
/// <param name="AsCast">Its mesh as cast.</param>
/// <param name="AllowanceMm">How far its polished faces stand out as cast.</param>
/// <param name="BackMm">How far behind them those of the part to be sprued lie.</param>
internal sealed record FaceSource(Part Part, Mesh AsCast, double AllowanceMm, double BackMm);
