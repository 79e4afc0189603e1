namespace Linewright.Materials;

/// <summary>How far a size scatters that the bench makes or mends, one standard deviation.</summary>
/// <param name="Key">Name of the fit.</param>
/// <param name="Name">In the trade's words.</param>
/// <param name="SpreadMm">What the bench itself scatters.</param>
/// <param name="CastingShare">How much of the casting's scatter is left, 0 to 1.</param>
/// <param name="Source">Where the figures come from.</param>
/// <param name="Mark">One of <see cref="Marks"/>.</param>
public sealed record ProcessFit(string Key, string Name, double SpreadMm, double CastingShare, string Source, string Mark) : IMaterialRow;
