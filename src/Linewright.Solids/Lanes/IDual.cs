namespace Linewright.Solids.Lanes;

/// <summary>A number with its derivatives along x, y and z, made of and split into plain numbers.</summary>
public interface IDual<TDual, T> : IReal<TDual>
    where TDual : struct, IDual<TDual, T>
    where T : struct, IReal<T>
{
    /// <summary>The number.</summary>
    T Number { get; }

    /// <summary>Derivative along x.</summary>
    T AlongX { get; }

    /// <summary>Derivative along y.</summary>
    T AlongY { get; }

    /// <summary>Derivative along z.</summary>
    T AlongZ { get; }

    /// <summary>A number and its derivatives.</summary>
    static abstract TDual Of(T value, T x, T y, T z);
}
