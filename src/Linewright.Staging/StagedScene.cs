using Linewright.Pictures.Scenes;

namespace Linewright.Staging;

/// <summary>A scene ready to be drawn, and what was decided for it.</summary>
/// <param name="Scene">For the tracer.</param>
/// <param name="FocusStone">The stone that is sharp, counted from 1 at the tongue.</param>
/// <param name="MmPerPixel">Size of a pixel at that stone.</param>
public sealed record StagedScene(Scene Scene, int FocusStone, double MmPerPixel);
