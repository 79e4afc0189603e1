namespace Linewright.Materials;

/// <summary>A currency that a price list may be in; its key is the three letters of ISO 4217.</summary>
/// <param name="Key">EUR, JPY, ...</param>
/// <param name="Name">In words.</param>
/// <param name="MinorDigits">Decimals of the smallest unit in which sums are owed: 2 for cents, 0 for the yen, 3 for some dinars.</param>
/// <param name="Source">Where the digits come from.</param>
/// <param name="Mark">One of <see cref="Marks"/>.</param>
public sealed record Currency(string Key, string Name, int MinorDigits, string Source, string Mark) : IMaterialRow;
