using Linewright.Materials;

namespace Linewright.Making;

/// <summary>What to ask the stone dealer for: sizes that the seats accept, how many, how heavy, and in which words.</summary>
/// <remarks>Weights are estimates from the exact body; a parcel is invoiced by its balance.</remarks>
/// <param name="Cut">round.</param>
/// <param name="Species">Key of the species.</param>
/// <param name="Origin">natural, laboratory-grown or manufactured: the word that must stand on every paper.</param>
/// <param name="DiameterMm">What the seats are made for.</param>
/// <param name="SmallestMm">Smallest mean girdle diameter that the seats hold.</param>
/// <param name="LargestMm">Largest mean girdle diameter that the seats take.</param>
/// <param name="DepthMm">Table to culet of the stone that the links are built for.</param>
/// <param name="DeepestMm">Deepest pavilion, girdle to culet, that still clears the skin by the least distance.</param>
/// <param name="SpreadReason">What sets the spread.</param>
/// <param name="Sieve">Sieve lot that the size falls in, +12.5 -13; null where stones are sold by gauge.</param>
/// <param name="SieveNote">How the lot and the seats go together, or why there is no sieve.</param>
/// <param name="Count">Stones to be set.</param>
/// <param name="SparePercent">Spares asked for, % of the count; rounded up to whole stones.</param>
/// <param name="Spares">Whole stones beside those.</param>
/// <param name="Order">Stones to buy.</param>
/// <param name="EachCt">One stone, to a ten-thousandth of a carat.</param>
/// <param name="SetCt">Those that are set.</param>
/// <param name="OrderCt">Those that are bought.</param>
/// <param name="Words">What to write on the order, a sentence each.</param>
/// <param name="Mark">How far spares and sieve are to be trusted, one of <see cref="Marks"/>.</param>
public sealed record StoneOrder(
    string Cut,
    string Species,
    string Origin,
    double DiameterMm,
    double SmallestMm,
    double LargestMm,
    double DepthMm,
    double DeepestMm,
    string SpreadReason,
    string? Sieve,
    string SieveNote,
    int Count,
    decimal SparePercent,
    int Spares,
    int Order,
    decimal EachCt,
    decimal SetCt,
    decimal OrderCt,
    IReadOnlyList<string> Words,
    string Mark);
