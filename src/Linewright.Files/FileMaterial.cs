using Linewright.Solids.Space;

namespace Linewright.Files;

/// <summary>What a file says about a part's material: a name and how a viewer should light it.</summary>
/// <remarks>
/// Colours are linear light in the primaries of IEC 61966-2-1, 0 to 1; a metal's colour is its reflectance at
/// normal incidence. A refractive index marks a clear material, which lets light through.
/// Two parts with equal materials share one entry in a file.
/// </remarks>
/// <param name="Name">The name that a person reads, such as "gold-750-yellow".</param>
/// <param name="Red">Linear red, 0 to 1.</param>
/// <param name="Green">Linear green, 0 to 1.</param>
/// <param name="Blue">Linear blue, 0 to 1.</param>
/// <param name="Metallic">1 for metal, 0 for everything else.</param>
/// <param name="Roughness">0 for a mirror polish, 1 for matt.</param>
/// <param name="RefractiveIndex">Index at 589.3 nm, at least 1; null where the material is opaque.</param>
public sealed record FileMaterial(
    string Name, double Red, double Green, double Blue, double Metallic, double Roughness, double? RefractiveIndex = null)
{
    public string Name { get; } = ReadableName.Checked(Name);

    public double Red { get; } = Guard.InRange(Red, 0, 1);

    public double Green { get; } = Guard.InRange(Green, 0, 1);

    public double Blue { get; } = Guard.InRange(Blue, 0, 1);

    public double Metallic { get; } = Guard.InRange(Metallic, 0, 1);

    public double Roughness { get; } = Guard.InRange(Roughness, 0, 1);

    // Nothing that a jeweller sets exceeds 4; a larger number is a slip, not a stone.
    public double? RefractiveIndex { get; } = RefractiveIndex is { } index ? Guard.InRange(index, 1, 4) : null;
}
