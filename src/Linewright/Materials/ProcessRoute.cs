namespace Linewright.Materials;

/// <summary>A way from the drawing to the finished part: the keys of its steps, in order. The key is what process.route says.</summary>
public sealed record ProcessRoute(string Key, string Name, IReadOnlyList<string> Steps, string Source, string Mark) : IMaterialRow;
