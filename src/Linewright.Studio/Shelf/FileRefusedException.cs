namespace Linewright.Studio.Shelf;

/// <summary>A file that the studio does not read or write.</summary>
public sealed class FileRefusedException(string name, string reason, bool IsMissing = false, bool IsConflict = false) : Exception($"{name}: {reason}")
{
    /// <summary>The name asked for.</summary>
    public string Name { get; } = name;

    /// <summary>True where there is no such file.</summary>
    public bool IsMissing { get; } = IsMissing;

    /// <summary>True where something else is there.</summary>
    public bool IsConflict { get; } = IsConflict;
}
