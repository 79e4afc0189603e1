namespace Linewright.Quote;

/// <summary>A row of the price list for what is bought ready or sent along.</summary>
/// <param name="Path">Where it stands in the list: findings[0].</param>
/// <param name="Name">What it is.</param>
/// <param name="Per">What it is counted by.</param>
/// <param name="Each">For each.</param>
public sealed record CountedPrice(string Path, string Name, CountOf Per, decimal Each);
