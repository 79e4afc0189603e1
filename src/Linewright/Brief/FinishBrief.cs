namespace Linewright.Brief;

/// <summary>What happens after polishing: rhodium plate in micrometres, 0 is none.</summary>
public sealed record FinishBrief(double RhodiumUm);
