using Linewright.Solids.Space;

namespace Linewright.Pictures.Scenes;

/// <summary>One metal part where it lies: a shape of the scene, placed, with its surface.</summary>
/// <param name="Shape">Index into <see cref="Scene.Shapes"/>.</param>
/// <param name="Place">From the shape's frame to the scene's.</param>
/// <param name="Finish">Metal and polish.</param>
public sealed record MetalInstance(int Shape, Pose Place, ConductorFinish Finish);
