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
        return FacetTracing.Leave(Things.Bodies[stone].Planes, origin, direction);
    }

    public readonly Float4 Facet(int stone, int facet)
    {
        ref readonly var planes = ref Things.Bodies[stone].Planes;
        var numbers = planes.Numbers + facet;
        return new Float4(numbers[0], numbers[planes.Padded], numbers[2 * planes.Padded], numbers[3 * planes.Padded]);
    }

    public readonly ref readonly Turn StoneFrame(int stone) => ref Things.Bodies[stone].Frame;

    public readonly ref readonly Turn MetalFrame(int metal) => ref Things.Meshes[metal].Frame;

    public readonly ref readonly TriangleNormals Normals(int metal, int triangle) => ref Things.Meshes[metal].Normals[triangle];

    public readonly ref readonly MetalRecord Metal(int metal) => ref Metals[metal];

    public readonly ref readonly StoneRecord Stone(int stone) => ref Stones[stone];

    public readonly ref readonly LampRecord Lamp(int lamp) => ref LampRows[lamp];

    public readonly ref readonly StripRecord Strip(int strip) => ref Strips[strip];

    public readonly ref readonly SkyCell Cell(int cell) => ref Cells[cell];

    public readonly ref readonly WaveBin Wave(int bin) => ref Waves[bin];

    public readonly float Curve(int place) => CurveRows[place];

    public readonly float Albedo(int place) => Albedos[place];

    public readonly uint SobolNumber(int place) => Sobol[place];
}
