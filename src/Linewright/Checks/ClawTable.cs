namespace Linewright.Checks;

/// <summary>What the trade gives a claw for a round stone: its finished diameter and how far it lies over the crown, mm.</summary>
/// <param name="UpToMm">Stones below this diameter.</param>
/// <param name="LeastMm">Thinnest claw.</param>
/// <param name="MostMm">Thickest claw.</param>
/// <param name="LeastCoverMm">Least cover, measured towards the axis.</param>
/// <param name="MostCoverMm">Most cover.</param>
/// <remarks>Common practice.</remarks>
internal sealed record ClawTable(double UpToMm, double LeastMm, double MostMm, double LeastCoverMm, double MostCoverMm)
{
    private static readonly ClawTable[] Rows =
    [
        new(1.35, 0.45, 0.55, 0.15, 0.20),
        new(1.95, 0.55, 0.65, 0.18, 0.22),
        new(2.45, 0.65, 0.75, 0.20, 0.25),
        new(2.95, 0.70, 0.80, 0.22, 0.28),
        new(3.45, 0.75, 0.85, 0.25, 0.30),
        new(3.95, 0.80, 0.95, 0.28, 0.35),
        new(4.95, 0.90, 1.05, 0.32, 0.40),
        new(6.45, 1.00, 1.20, 0.38, 0.50),
        new(double.PositiveInfinity, 1.15, 1.40, 0.45, 0.65),
    ];

    /// <summary>The row for a stone.</summary>
    public static ClawTable For(double stoneMm) => Rows.First(row => stoneMm < row.UpToMm);
}
