namespace Linewright.Parts;

/// <summary>Who gives a feature of a cast part its thickness, and so whose scatter decides it. Drawn wire is a part of its own that is not cast.</summary>
public enum MadeBy
{
    /// <summary>The casting: it scatters as castings do.</summary>
    Casting,

    /// <summary>A mill: strip rolled to its gauge, which takes no scatter from a casting.</summary>
    Rolling,

    /// <summary>The bench, which cuts, files or burnishes it and gauges it.</summary>
    Bench,
}
