namespace Linewright.Studio.Shelf;

/// <summary>A brief in the folder.</summary>
/// <param name="Name">Plain name with its ending.</param>
/// <param name="Changed">When it was last written.</param>
/// <param name="Bytes">How large it is.</param>
/// <param name="HasWorking">True where newer work lies beside it.</param>
public sealed record BriefFile(string Name, DateTimeOffset Changed, long Bytes, bool HasWorking);
