using Linewright.Solids.Space;

namespace Linewright.Casting;

/// <summary>Where a sprue stands on a part, in the part's frame, mm.</summary>
/// <param name="Point">Middle of the gate, on the surface of the part as cast.</param>
/// <param name="Outward">Unit vector from the part into the sprue.</param>
/// <param name="RoomMm">Diameter of the gate: it meets polished face, or overhangs an edge, and hides nothing else.</param>
/// <param name="ContactMm">Diameter of a disc as large as the face that the gate meets.</param>
/// <param name="SectionMm">Metal behind the gate's middle, straight through.</param>
/// <param name="SinkMm">How far the sprue reaches under the point to meet the face all over.</param>
/// <param name="NeckMm">How far the sprue keeps the gate's diameter, clear of what stands beside it.</param>
public sealed record SprueSite(Vec3 Point, Vec3 Outward, double RoomMm, double ContactMm, double SectionMm, double SinkMm, double NeckMm);
