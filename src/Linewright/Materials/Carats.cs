namespace Linewright.Materials;

/// <summary>A mass of stone in metric carats; 1 ct is exactly 0.2 g.</summary>
public readonly record struct Carats(double Value)
{
    /// <summary>The same mass as metal is weighed.</summary>
    public Grams ToGrams() => new(Value * TradeUnits.GramsPerCarat);

    /// <summary>The weight of a stone from its volume and specific gravity: V rho / 200.</summary>
    public static Carats OfVolume(double volumeMm3, double specificGravity) => Grams.OfVolume(volumeMm3, specificGravity).ToCarats();

    public static Carats operator +(Carats a, Carats b) => new(a.Value + b.Value);

    public static Carats operator -(Carats a, Carats b) => new(a.Value - b.Value);

    public static Carats operator *(Carats weight, double times) => new(weight.Value * times);

    public static Carats operator *(double times, Carats weight) => weight * times;

    /// <inheritdoc/>
    public override string ToString() => FormattableString.Invariant($"{Value} ct");
}
