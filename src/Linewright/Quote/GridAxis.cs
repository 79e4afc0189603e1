namespace Linewright.Quote;

/// <summary>One thing that a grid varies.</summary>
/// <param name="Path">Field of the brief: stone.diameter_mm.</param>
/// <param name="Values">As they were written.</param>
public sealed record GridAxis(string Path, IReadOnlyList<string> Values);
