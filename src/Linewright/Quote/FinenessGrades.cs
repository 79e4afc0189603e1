using Linewright.Materials;

namespace Linewright.Quote;

/// <summary>The grades that precious metal is marked by, parts in a thousand.</summary>
/// <remarks>Standard: ISO 9202, fineness of precious metal alloys; the list is from memory. National law may know fewer grades, or others.</remarks>
public static class FinenessGrades
{
    private static readonly int[] Gold = [333, 375, 585, 750, 916, 990, 999], Silver = [800, 830, 925, 958, 999], Platinum = [850, 900, 950, 999], Palladium = [500, 950, 999];

    /// <summary>The grade that an alloy may be marked with: the highest that it reaches; null for base metal and below the lowest.</summary>
    /// <remarks>There is no minus tolerance: an alloy that misses a grade by a part in a thousand takes the next lower one.</remarks>
    public static int? Of(Alloy alloy)
    {
        ArgumentNullException.ThrowIfNull(alloy);
        var grades = alloy.Family switch
        {
            MetalFamily.Gold => Gold,
            MetalFamily.Silver => Silver,
            MetalFamily.Platinum => Platinum,
            MetalFamily.Palladium => Palladium,
            _ => [],
        };
        var reached = grades.Where(grade => grade <= alloy.FinenessPerMille).ToList();
        return reached.Count > 0 ? reached[^1] : null;
    }
}
