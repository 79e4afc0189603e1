using Linewright.Solids.Space;

namespace Linewright.Pictures.Scenes;

/// <summary>A thin lens before a flat film: where it stands, what it looks at, what is sharp.</summary>
/// <param name="Eye">Centre of the lens, mm.</param>
/// <param name="Target">What lies in the middle of the picture, mm.</param>
/// <param name="Up">Any direction that points up in the picture; not along the view.</param>
/// <param name="Field">Full angle of view from bottom to top, radians, 0.001 to 3.</param>
/// <param name="FocalDistance">From the eye to the sharp plane along the view, mm.</param>
/// <param name="ApertureRadius">Radius of the opening, mm; 0 makes everything sharp.</param>
public sealed record Lens(Vec3 Eye, Vec3 Target, Vec3 Up, double Field, double FocalDistance, double ApertureRadius)
{
    /// <summary>A lens that is sharp at its target.</summary>
    public static Lens Focused(Vec3 eye, Vec3 target, double field, double apertureRadius)
        => new(eye, target, Vec3.UnitZ, field, (target - eye).Length, apertureRadius);

    internal void Check()
    {
        Guard.InRange(Field, 0.001, 3);
        Guard.Positive(FocalDistance);
        Guard.InRange(ApertureRadius, 0, 1000);
        Guard.Positive((Target - Eye).Length);
        Guard.Positive((Target - Eye).Cross(Up).Length);
    }
}
