namespace Linewright.Layout;

/// <summary>Why no line can be laid out, and what would work.</summary>
/// <param name="Reason">One sentence with the numbers.</param>
/// <param name="NearestShorterMm">The longest length below the one asked for that works; null where there is none. The same measure that was asked for: laid-flat length or inside circumference.</param>
/// <param name="NearestLongerMm">The shortest length above it that works; null where there is none.</param>
public sealed record LineRefusal(string Reason, double? NearestShorterMm, double? NearestLongerMm);
