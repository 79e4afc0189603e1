using System.Runtime.CompilerServices;
using Linewright.Pictures.Rays;

namespace Linewright.Pictures.Transport;

/// <summary>The scene in main memory, for the processor's own cores and vector unit.</summary>
/// <remarks>Pointers only; <see cref="CompiledScene"/> owns what they point at.</remarks>
internal unsafe struct ProcessorWorld : IWorld
{
    public ThingTree Things;
    public MetalRecord* Metals;
    public StoneRecord* Stones;
    public LampRecord* LampRows;
    public StripRecord* Strips;
    public SkyCell* Cells;
    public WaveBin* Waves;
    public float* CurveRows;
    public float* Albedos;
    public uint* Sobol;

    public readonly Encounter Nearest(Float3 origin, Float3 direction, float far, int leaveOut) => Things.Nearest(origin, direction, far, leaveOut, false);

    public readonly bool IsBlocked(Float3 origin, Float3 direction, float far) => Things.Nearest(origin, direction, far, -1, true).Thing >= 0;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly FacetHit Leave(int stone, Float3 origin, Float3 direction)
    {
        var body = Things.Bodies + stone;
        return FacetTracing.Leave(body->Planes, body->Padded, origin, direction);
    }

    public readonly Float4 Facet(int stone, int facet)
    {
        var body = Things.Bodies + stone;
        return new Float4(
            body->Planes[facet], body->Planes[body->Padded + facet], body->Planes[2 * body->Padded + facet], body->Planes[3 * body->Padded + facet]);
    }

    public readonly Turn StoneFrame(int stone) => Things.Bodies[stone].Frame;

    public readonly Turn MetalFrame(int metal) => Things.Meshes[metal].Frame;

    public readonly TriangleNormals Normals(int metal, int triangle) => Things.Meshes[metal].Normals[triangle];

    public readonly MetalRecord Metal(int metal) => Metals[metal];

    public readonly StoneRecord Stone(int stone) => Stones[stone];

    public readonly LampRecord Lamp(int lamp) => LampRows[lamp];

    public readonly StripRecord Strip(int strip) => Strips[strip];

    public readonly SkyCell Cell(int cell) => Cells[cell];

    public readonly WaveBin Wave(int bin) => Waves[bin];

    public readonly float Curve(int place) => CurveRows[place];

    public readonly float Albedo(int place) => Albedos[place];

    public readonly uint SobolNumber(int place) => Sobol[place];
}
