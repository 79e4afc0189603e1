using System.Collections.Immutable;
using Linewright.Solids.Meshing;
using Linewright.Solids.Polyhedra;
using Linewright.Solids.Space;

namespace Linewright.Pictures.Scenes;

/// <summary>Everything a picture is made from. mm, z up; never changes.</summary>
/// <remarks>
/// Meshes must be closed, counter-clockwise from outside: a mesh is metal inside. Stones must not overlap each other;
/// a stone may touch its metal or dip into it by some micrometres.
/// </remarks>
/// <param name="Lens">The camera.</param>
/// <param name="Shapes">Metal surfaces, each in its own frame.</param>
/// <param name="Metals">Where they stand.</param>
/// <param name="Bodies">Faceted bodies, each in its own frame.</param>
/// <param name="Stones">Where they stand.</param>
/// <param name="Ground">What all of it lies on; null for nothing.</param>
/// <param name="Lights">Rectangles of light, at most 32.</param>
/// <param name="Surroundings">Light from everywhere else.</param>
public sealed record Scene(
    Lens Lens,
    ImmutableArray<Mesh> Shapes,
    ImmutableArray<MetalInstance> Metals,
    ImmutableArray<ConvexPolyhedron> Bodies,
    ImmutableArray<StoneInstance> Stones,
    Ground? Ground,
    ImmutableArray<AreaLight> Lights,
    Surroundings Surroundings)
{
    /// <summary>Refuses what cannot be drawn.</summary>
    /// <exception cref="ArgumentOutOfRangeException">An index points nowhere, or a number is outside its range.</exception>
    public void Check()
    {
        Lens.Check();
        Ground?.Check();
        Surroundings.Check();
        Guard.InRange(Lights.Length, 0, 32, nameof(Lights));
        foreach (var light in Lights)
        {
            light.Check();
        }

        foreach (var metal in Metals)
        {
            Guard.InRange(metal.Shape, 0, Shapes.Length - 1, nameof(Metals));
            metal.Finish.Check();
        }

        foreach (var stone in Stones)
        {
            Guard.InRange(stone.Body, 0, Bodies.Length - 1, nameof(Stones));
        }
    }
}
