using Linewright.Solids.Lanes;

namespace Linewright.Solids.Shapes;

/// <summary>A closed outline in a plane: signed distance in mm, negative inside.</summary>
internal interface IOutline
{
    /// <summary>Lowest and highest first coordinate, then the same of the second.</summary>
    (double LowU, double HighU, double LowV, double HighV) Reach { get; }

    /// <summary>Signed distance in the plane.</summary>
    T Distance<T>(T u, T v)
        where T : struct, IReal<T>;
}
