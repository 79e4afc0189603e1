namespace Linewright.Paper;

/// <summary>How strong the strokes of lettering are.</summary>
public enum TextWeight
{
    /// <summary>For running text and dimensions.</summary>
    Regular,

    /// <summary>For headings and names.</summary>
    Strong,
}
