namespace Linewright.Materials;

/// <summary>A mass of metal in grams.</summary>
public readonly record struct Grams(double Value)
{
    /// <summary>The same mass as a stone is weighed.</summary>
    public Carats ToCarats() => new(Value / TradeUnits.GramsPerCarat);

    /// <summary>The same mass in troy ounces, as precious metal is priced.</summary>
    public double TroyOunces => Value / TradeUnits.GramsPerTroyOunce;

    /// <summary>The same mass in pennyweights.</summary>
    public double Pennyweights => Value / TradeUnits.GramsPerPennyweight;

    /// <summary>The mass of a volume at a density: 1 mm3 is a thousandth of 1 cm3.</summary>
    public static Grams OfVolume(double volumeMm3, double densityGPerCm3) => new(volumeMm3 * densityGPerCm3 / 1000);

    public static Grams operator +(Grams a, Grams b) => new(a.Value + b.Value);

    public static Grams operator -(Grams a, Grams b) => new(a.Value - b.Value);

    public static Grams operator *(Grams mass, double times) => new(mass.Value * times);

    public static Grams operator *(double times, Grams mass) => mass * times;

    /// <inheritdoc/>
    public override string ToString() => FormattableString.Invariant($"{Value} g");
}
