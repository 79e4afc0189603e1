using System.Runtime.CompilerServices;
using Linewright.Solids.Lanes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Shapes;

/// <summary>How two surfaces meet: at a sharp edge, by a fillet or by a chamfer.</summary>
/// <remarks>
/// The fillet is a quadratic smooth minimum. With width k it differs from the plain minimum only where the two
/// distances differ by less than k; at a right angle its leg is k and its smallest radius is k divided by the square
/// root of two. Two surfaces that lie flush bulge by a quarter of k: blend only pairs that cross.
/// The chamfer's plane has legs of the given size; its distance is halved so that it never overstates.
/// </remarks>
public readonly struct Blend
{
    private readonly float width;
    private readonly bool isChamfer;

    private Blend(double width, bool isChamfer)
    {
        this.width = (float)width;
        this.isChamfer = isChamfer;
    }

    /// <summary>No blend.</summary>
    public static Blend Sharp => default;

    /// <summary>How far, in distance, the blend reaches beyond the plain minimum, mm.</summary>
    public float Reach => width;

    /// <summary>A fillet whose smallest radius at a right angle is the one given, mm; 0 is sharp.</summary>
    public static Blend Fillet(double radius) => new(Guard.InRange(radius, 0, 1e3) * Math.Sqrt(2), false);

    /// <summary>A chamfer whose legs have the size given, mm; 0 is sharp.</summary>
    public static Blend Chamfer(double leg) => new(Guard.InRange(leg, 0, 1e3), true);

    /// <summary>The blended minimum of two distances.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal T Lower<T>(T a, T b)
        where T : struct, IReal<T>
    {
        if (width == 0)
        {
            return T.Min(a, b);
        }

        if (isChamfer)
        {
            return T.Min(T.Min(a, b), (a + b - T.C(width)) * T.C(0.5));
        }

        var h = T.Max(T.C(width) - T.Abs(a - b), T.C(0));
        return T.Min(a, b) - h * h * T.C(0.25 / width);
    }

    /// <summary>The blended maximum of two distances.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal T Upper<T>(T a, T b)
        where T : struct, IReal<T>
    {
        if (width == 0)
        {
            return T.Max(a, b);
        }

        if (isChamfer)
        {
            return T.Max(T.Max(a, b), (a + b + T.C(width)) * T.C(0.5));
        }

        var h = T.Max(T.C(width) - T.Abs(a - b), T.C(0));
        return T.Max(a, b) + h * h * T.C(0.25 / width);
    }
}
