namespace Linewright.Layout;

/// <summary>How long a box clasp is, hinge axis to hinge axis, mm: the one place that planner and check take it from.</summary>
/// <remarks>Common practice: boxes are 8 to 16 mm long. Shorter ones hold no tongue that lasts, longer ones ride on the wrist.</remarks>
public static class ClaspRange
{
    /// <summary>The shortest that is usual; under it a check speaks up.</summary>
    public const double UsualLowMm = 8;

    /// <summary>The longest that is usual; over it a check speaks up.</summary>
    public const double UsualHighMm = 16;

    /// <summary>The shortest that can be worn at all; under it a check fails. Assumed.</summary>
    public const double LowMm = 6;

    /// <summary>The longest that can be worn at all; over it a check fails. Assumed.</summary>
    public const double HighMm = 25;
}
