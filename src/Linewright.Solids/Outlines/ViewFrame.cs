using Linewright.Solids.Space;

namespace Linewright.Solids.Outlines;

/// <summary>How a view looks at space: parallel rays, no perspective. Unit directions, right-handed: right, up, towards the eye.</summary>
public readonly record struct ViewFrame
{
    private ViewFrame(Vec3 right, Vec3 up, Vec3 toward) => (Right, Up, Toward) = (right, up, toward);

    /// <summary>What lies to the right on the paper.</summary>
    public Vec3 Right { get; }

    /// <summary>What lies up on the paper.</summary>
    public Vec3 Up { get; }

    /// <summary>From the body to the eye; depth grows along it.</summary>
    public Vec3 Toward { get; }

    /// <summary>Looks from a direction, with another up as far as it can be.</summary>
    /// <param name="toward">From the body to the eye.</param>
    /// <param name="up">What is to be up; not along <paramref name="toward"/>.</param>
    /// <exception cref="ArgumentException">The two are parallel, or one is zero.</exception>
    public static ViewFrame From(Vec3 toward, Vec3 up)
    {
        var eye = toward.Normalised();
        var right = up.Cross(eye);
        if (!(right.Length > 1e-9 * up.Length))
        {
            throw new ArgumentException("up must not lie along the view", nameof(up));
        }

        right = right.Normalised();
        return new ViewFrame(right, eye.Cross(right), eye);
    }

    /// <summary>Where a point falls on the paper.</summary>
    public FlatPoint Flat(Vec3 p) => new(Right.Dot(p), Up.Dot(p));

    /// <summary>How near to the eye a point is, mm; larger is nearer.</summary>
    public double Depth(Vec3 p) => Toward.Dot(p);
}
