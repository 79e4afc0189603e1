namespace Linewright.Materials;

/// <summary>A row of a material table: found by its key, and always with the source of its figures.</summary>
public interface IMaterialRow
{
    /// <summary>The name that a brief uses: lower case, hyphens.</summary>
    string Key { get; }

    /// <summary>Where the figures come from.</summary>
    string Source { get; }

    /// <summary>One of <see cref="Marks"/>.</summary>
    string Mark { get; }
}
