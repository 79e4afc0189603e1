namespace Linewright.Solids.Outlines;

/// <summary>A side of a body where the normals of its two triangles differ, by too little for an edge.</summary>
/// <param name="Corner">The corner that it starts from, and runs to the next one in its triangle.</param>
/// <param name="OtherAtStart">The other triangle's corner at its start.</param>
/// <param name="OtherAtEnd">The other triangle's corner at its end.</param>
internal readonly record struct BodyBend(int Corner, int OtherAtStart, int OtherAtEnd);
