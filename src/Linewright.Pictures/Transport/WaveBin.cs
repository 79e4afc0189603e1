namespace Linewright.Pictures.Transport;

/// <summary>One of 1,024 equally likely wavelengths, and what one unit of light there adds to red, green and blue.</summary>
internal struct WaveBin
{
    public const int Count = 1024;

    public float Nm;
    public float Red;
    public float Green;
    public float Blue;
}
