using Linewright.Pictures.Rays;

namespace Linewright.Bench;

/// <summary>A ray that both trees are given.</summary>
internal readonly record struct TestRay(Float3 Origin, Float3 Direction);
