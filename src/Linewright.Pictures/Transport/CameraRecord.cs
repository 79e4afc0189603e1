using Linewright.Pictures.Rays;

namespace Linewright.Pictures.Transport;

/// <summary>The lens, for the kernel.</summary>
internal struct CameraRecord
{
    public int Width;
    public int Height;
    public Float3 Eye;
    public Float3 Forward;
    public Float3 Right;
    public Float3 Up;
    public float HalfHeight;
    public float Aperture;
    public float Focus;
}
