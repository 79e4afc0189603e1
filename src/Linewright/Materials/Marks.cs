namespace Linewright.Materials;

/// <summary>How far a figure is to be trusted; printed wherever the figure decides a verdict.</summary>
public static class Marks
{
    /// <summary>A document that states the figure was read.</summary>
    public const string SourceRead = "source read";

    /// <summary>The source is named, the figure is from memory.</summary>
    public const string FromMemory = "from memory";

    /// <summary>General trade knowledge without one source.</summary>
    public const string CommonPractice = "common practice";

    /// <summary>Follows from stated geometry or other figures.</summary>
    public const string Calculated = "calculated";

    /// <summary>Chosen here, for the reason given with it.</summary>
    public const string Assumed = "assumed";

    /// <summary>Asked for in the brief.</summary>
    public const string Asked = "asked in the brief";

    /// <summary>Every mark there is.</summary>
    public static IReadOnlyList<string> All { get; } = [SourceRead, FromMemory, CommonPractice, Calculated, Assumed, Asked];
}
