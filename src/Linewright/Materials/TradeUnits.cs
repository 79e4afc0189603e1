namespace Linewright.Materials;

/// <summary>The trade's units in millimetres and grams. All are exact by definition.</summary>
public static class TradeUnits
{
    /// <summary>Source: CGPM 4 (1907), metric carat. From memory.</summary>
    public const double GramsPerCarat = 0.2;

    /// <summary>Source: international yard and pound agreement (1959): 480 grains of 0.06479891 g. From memory.</summary>
    public const double GramsPerTroyOunce = 31.1034768;

    /// <summary>A twentieth of a troy ounce. Calculated.</summary>
    public const double GramsPerPennyweight = 1.55517384;

    /// <summary>Source: international yard and pound agreement (1959). From memory.</summary>
    public const double GramsPerGrain = 0.06479891;

    /// <summary>Source: international yard and pound agreement (1959). From memory.</summary>
    public const double MmPerInch = 25.4;

    /// <summary>The fineness of a gold of so many carats: parts per thousand, carat / 24.</summary>
    public static double FinenessPerMille(double carat) => carat * 1000 / 24;
}
