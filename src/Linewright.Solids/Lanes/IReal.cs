namespace Linewright.Solids.Lanes;

/// <summary>
/// The arithmetic that a distance formula may use. One text of a formula then serves a single double, a
/// single float, 4, 8 or 16 floats at once, and each of them with its exact gradient (<see cref="Dual{T}"/>).
/// </summary>
/// <remarks>
/// Every operation is one IEEE operation a lane and none is fused, so that all widths give the same bits and a
/// mesh does not depend on the processor it was made on. Minimum and maximum keep the first operand on a tie.
/// </remarks>
public interface IReal<T>
    where T : struct, IReal<T>
{
    /// <summary>Numbers handled at once.</summary>
    static abstract int Width { get; }

    /// <summary>The same number in every lane.</summary>
    static abstract T C(double value);

    /// <summary>Reads <see cref="Width"/> numbers.</summary>
    static abstract T Load(ref readonly float source);

    /// <summary>Writes <see cref="Width"/> numbers.</summary>
    static abstract void Store(T value, ref float target);

    static abstract T operator +(T a, T b);

    static abstract T operator -(T a, T b);

    static abstract T operator *(T a, T b);

    static abstract T operator -(T a);

    /// <summary>The smaller; the first on a tie.</summary>
    static abstract T Min(T a, T b);

    /// <summary>The larger; the first on a tie.</summary>
    static abstract T Max(T a, T b);

    /// <summary>Magnitude.</summary>
    static abstract T Abs(T a);

    /// <summary>Square root.</summary>
    static abstract T Sqrt(T a);

    /// <summary>1 / a.</summary>
    static abstract T Reciprocal(T a);

    /// <summary>Where a is less than b the third, elsewhere the fourth.</summary>
    static abstract T IfLess(T a, T b, T then, T otherwise);
}
