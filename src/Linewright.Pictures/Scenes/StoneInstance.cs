using Linewright.Solids.Space;

namespace Linewright.Pictures.Scenes;

/// <summary>One stone where it lies: a body of the scene, placed, of one material.</summary>
/// <param name="Body">Index into <see cref="Scene.Bodies"/>.</param>
/// <param name="Place">From the body's frame to the scene's.</param>
/// <param name="Material">Refraction and absorption.</param>
public sealed record StoneInstance(int Body, Pose Place, StoneMaterial Material);
