namespace Linewright.Pictures.Gpu;

/// <summary>Some of a pixel's samples, taken by one lane. A pixel that wants many is shared out to several.</summary>
internal struct CardTask
{
    /// <summary>Number of the pixel, row by row from the top left.</summary>
    public int Pixel;

    /// <summary>Number of the first sample in its pixel.</summary>
    public int First;

    /// <summary>One past the last.</summary>
    public int End;
}
