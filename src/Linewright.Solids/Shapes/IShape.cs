using Linewright.Solids.Lanes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Shapes;

/// <summary>A primitive in its own frame: one formula for its signed distance, negative inside, in mm.</summary>
/// <remarks>The formula is exact unless the shape says otherwise, and never overstates how far the surface is.</remarks>
public interface IShape
{
    /// <summary>A box that holds the whole shape.</summary>
    Bounds Bounds { get; }

    /// <summary>Signed distance to the surface.</summary>
    T Distance<T>(T x, T y, T z)
        where T : struct, IReal<T>;
}
