namespace Linewright.Files;

/// <summary>One column of a sheet.</summary>
/// <param name="Heading">What stands over it, in the frozen row.</param>
/// <param name="Width">In characters of the usual type, as workbooks count it.</param>
public sealed record SheetColumn(string Heading, double Width);
