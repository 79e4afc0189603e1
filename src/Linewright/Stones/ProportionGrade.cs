namespace Linewright.Stones;

/// <summary>One proportion beside its good and its acceptable range; shares of the diameter or degrees, as the name says.</summary>
public sealed record ProportionGrade(string Name, double Value, double GoodLow, double GoodHigh, double AcceptableLow, double AcceptableHigh)
{
    /// <summary>True inside the good range.</summary>
    public bool IsGood => Value >= GoodLow && Value <= GoodHigh;

    /// <summary>True inside the wider range.</summary>
    public bool IsAcceptable => Value >= AcceptableLow && Value <= AcceptableHigh;
}
