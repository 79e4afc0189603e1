namespace Linewright.Parts;

/// <summary>How high the table of a stone-set link stands over the skin.</summary>
internal static class HeightRule
{
    /// <summary>The most that is usual, mm: the trade's 0.68 d + 0.9, and half a millimetre more for the wearer to accept.</summary>
    /// <remarks>Source: height rule, common practice; the half millimetre: Assumed, because it keeps eyes over bars from 2.5 mm up.</remarks>
    /// <param name="stoneMm">Stone diameter.</param>
    public static double MostMm(double stoneMm) => 0.68 * stoneMm + 1.4;
}
