namespace Linewright.Making;

/// <summary>The stones of the piece.</summary>
/// <param name="Count">How many are set.</param>
/// <param name="EachCt">Weight of one from its exact volume.</param>
/// <param name="EachCtTrade">Weight of one by the trade's formula.</param>
/// <param name="TotalCt">All together, from the exact volume.</param>
public sealed record StonesReport(int Count, double EachCt, double EachCtTrade, double TotalCt);
