namespace Linewright.Paper;

/// <summary>One thing on a page: a stroke, an area or a label. Later marks lie over earlier ones.</summary>
public abstract record Mark
{
    /// <summary>The box round it, without the width of its line, mm.</summary>
    public abstract PaperBox Box { get; }

    /// <summary>The same mark elsewhere on the page.</summary>
    public abstract Mark Moved(PaperPoint step);
}
