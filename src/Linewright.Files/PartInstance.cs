using Linewright.Solids.Space;

namespace Linewright.Files;

/// <summary>One piece of metal or one stone in the assembly: its readable name and where it lies.</summary>
/// <param name="Name">A name that no other instance of the part has, such as "link 07".</param>
/// <param name="Pose">From the part's own frame to the assembly's, mm.</param>
public sealed record PartInstance(string Name, Pose Pose);
