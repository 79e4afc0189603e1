namespace Linewright.Paper;

/// <summary>One column of a table.</summary>
/// <param name="Heading">What stands over it.</param>
/// <param name="WidthMm">With its padding on both sides.</param>
/// <param name="Align">How its cells stand.</param>
public sealed record TableColumn(string Heading, double WidthMm, Align Align = Align.Left);
