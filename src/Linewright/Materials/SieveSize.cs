namespace Linewright.Materials;

/// <summary>A lot of small round diamonds as sieves sort it: all that pass one plate and stay on the next.</summary>
/// <remarks>Plates of different makers differ by about 0.05 mm, lots of one plate by about 10 % in weight. Common practice.</remarks>
/// <param name="Key">The plates' numbers: +6 -6.5 stays on 6 and passes 6.5.</param>
/// <param name="LowMm">Smallest diameter of the lot.</param>
/// <param name="HighMm">Largest diameter of the lot; the next lot begins there.</param>
/// <param name="EachCt">Weight of one stone as parcels are listed.</param>
/// <param name="Source">Where the row comes from.</param>
/// <param name="Mark">One of <see cref="Marks"/>.</param>
public sealed record SieveSize(string Key, double LowMm, double HighMm, double EachCt, string Source, string Mark) : IMaterialRow;
