using Linewright.Brief;

namespace Linewright.Quote;

/// <summary>A row of the price list: how long an operation takes and what an hour of it costs.</summary>
/// <param name="Path">Where it stands in the list: labour.operations[4].</param>
/// <param name="Operation">The operation.</param>
/// <param name="Per">What its minutes are counted by.</param>
/// <param name="Minutes">For each.</param>
/// <param name="Rate">Name of the rate.</param>
/// <param name="PerHour">What an hour costs.</param>
/// <param name="Hinge">Only in lines with this hinge; null for both.</param>
public sealed record OperationPrice(string Path, Operation Operation, CountOf Per, decimal Minutes, string Rate, decimal PerHour, HingeKind? Hinge);
