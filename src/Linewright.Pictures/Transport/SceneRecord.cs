namespace Linewright.Pictures.Transport;

/// <summary>What a kernel needs of a scene beside its tables.</summary>
internal struct SceneRecord
{
    public CameraRecord Camera;
    public GroundRecord Ground;
    public SkyRecord Sky;
    public int MetalCount;
    public int LampCount;
    public float Clamp;
    public uint Seed;

    /// <summary>Ways in which light is found: 0 both, 1 by aiming alone, 2 by chance alone (the tests hold them against each other).</summary>
    public int Ways;
}
