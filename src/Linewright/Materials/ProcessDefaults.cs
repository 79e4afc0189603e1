namespace Linewright.Materials;

/// <summary>What casting asks of a metal family: how much it shrinks and how thin it may be. The key is the family.</summary>
/// <remarks>Sizes are finished, after polishing, in mm. Casting houses differ by 0.2 mm: these are settings.</remarks>
public sealed record ProcessDefaults(
    string Key,
    double LinearShrinkPercent,
    double MinimumWallMm,
    double MinimumKnuckleWallMm,
    double MinimumCastBarMm,
    string Source,
    string Mark) : IMaterialRow;
