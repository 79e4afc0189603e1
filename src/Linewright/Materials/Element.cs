namespace Linewright.Materials;

/// <summary>A chemical element that alloys are made of; its key is the symbol.</summary>
public sealed record Element(string Key, string Name, double DensityGPerCm3, string Source, string Mark) : IMaterialRow;
