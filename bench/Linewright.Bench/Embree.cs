using System.Runtime.InteropServices;
using Linewright.Solids.Meshing;
using Linewright.Solids.Space;

namespace Linewright.Bench;

/// <summary>The few calls of Embree 3 (Debian: libembree-dev) that the tracer's trees are measured against. Not used by any product.</summary>
internal sealed unsafe partial class Embree : IDisposable
{
    private const string Library = "libembree3.so.3";
    private const int Triangle = 0;
    private const int Instance = 121;
    private const int IndexBuffer = 0;
    private const int VertexBuffer = 1;
    private const int UInt3 = 0x5003;
    private const int Float3 = 0x9003;
    private const int Float3X4ColumnMajor = 0x9234;

    private readonly nint device;
    private readonly nint scene;
    private readonly List<nint> parts = [];

    public Embree(Mesh mesh, IReadOnlyList<Pose> places)
    {
        device = NewDevice(null);
        var part = NewScene(device);
        var geometry = NewGeometry(device, Triangle);
        mesh.Positions.CopyTo(new Span<float>(SetNewGeometryBuffer(geometry, VertexBuffer, 0, Float3, 12, (nuint)mesh.VertexCount), 3 * mesh.VertexCount));
        mesh.Triangles.CopyTo(new Span<int>(SetNewGeometryBuffer(geometry, IndexBuffer, 0, UInt3, 12, (nuint)mesh.TriangleCount), 3 * mesh.TriangleCount));
        CommitGeometry(geometry);
        _ = AttachGeometry(part, geometry);
        ReleaseGeometry(geometry);
        CommitScene(part);
        parts.Add(part);
        scene = NewScene(device);
        var matrix = stackalloc float[12];
        foreach (var place in places)
        {
            var instance = NewGeometry(device, Instance);
            SetGeometryInstancedScene(instance, part);
            Vec3[] columns = [place.AxisX, place.AxisY, place.AxisZ, place.Origin];
            for (var i = 0; i < 4; i++)
            {
                (matrix[3 * i], matrix[3 * i + 1], matrix[3 * i + 2]) = ((float)columns[i].X, (float)columns[i].Y, (float)columns[i].Z);
            }

            SetGeometryTransform(instance, 0, Float3X4ColumnMajor, matrix);
            CommitGeometry(instance);
            _ = AttachGeometry(scene, instance);
            ReleaseGeometry(instance);
        }

        CommitScene(scene);
    }

    /// <summary>What to say where the library is not here.</summary>
    public const string NotHere = "Rays are not measured against Embree: libembree3 is not installed (Debian: libembree-dev).";

    /// <summary>Whether the library is here.</summary>
    public static bool IsHere => NativeLibrary.TryLoad(Library, out _);

    /// <summary>Distance to the first triangle; far where there is none.</summary>
    public float Nearest(in TestRay ray)
    {
        Hit hit;
        hit.OX = ray.Origin.X;
        hit.OY = ray.Origin.Y;
        hit.OZ = ray.Origin.Z;
        hit.Near = 0;
        hit.DX = ray.Direction.X;
        hit.DY = ray.Direction.Y;
        hit.DZ = ray.Direction.Z;
        hit.Time = 0;
        hit.Far = 1e30f;
        hit.Mask = uint.MaxValue;
        hit.Flags = 0;
        hit.Geometry = hit.InstanceId = uint.MaxValue;
        Context context = default;
        context.InstanceId = uint.MaxValue;
        Intersect1(scene, &context, &hit);
        return hit.Far;
    }

    public void Dispose()
    {
        ReleaseScene(scene);
        parts.ForEach(ReleaseScene);
        ReleaseDevice(device);
    }

    [LibraryImport(Library, EntryPoint = "rtcNewDevice", StringMarshalling = StringMarshalling.Utf8)]
    private static partial nint NewDevice(string? config);

    [LibraryImport(Library, EntryPoint = "rtcReleaseDevice")]
    private static partial void ReleaseDevice(nint device);

    [LibraryImport(Library, EntryPoint = "rtcNewScene")]
    private static partial nint NewScene(nint device);

    [LibraryImport(Library, EntryPoint = "rtcCommitScene")]
    private static partial void CommitScene(nint scene);

    [LibraryImport(Library, EntryPoint = "rtcReleaseScene")]
    private static partial void ReleaseScene(nint scene);

    [LibraryImport(Library, EntryPoint = "rtcNewGeometry")]
    private static partial nint NewGeometry(nint device, int type);

    [LibraryImport(Library, EntryPoint = "rtcSetNewGeometryBuffer")]
    private static partial void* SetNewGeometryBuffer(nint geometry, int type, uint slot, int format, nuint stride, nuint count);

    [LibraryImport(Library, EntryPoint = "rtcSetGeometryInstancedScene")]
    private static partial void SetGeometryInstancedScene(nint geometry, nint scene);

    [LibraryImport(Library, EntryPoint = "rtcSetGeometryTransform")]
    private static partial void SetGeometryTransform(nint geometry, uint step, int format, float* matrix);

    [LibraryImport(Library, EntryPoint = "rtcCommitGeometry")]
    private static partial void CommitGeometry(nint geometry);

    [LibraryImport(Library, EntryPoint = "rtcAttachGeometry")]
    private static partial uint AttachGeometry(nint scene, nint geometry);

    [LibraryImport(Library, EntryPoint = "rtcReleaseGeometry")]
    private static partial void ReleaseGeometry(nint geometry);

    [LibraryImport(Library, EntryPoint = "rtcIntersect1")]
    [SuppressGCTransition]
    private static partial void Intersect1(nint scene, Context* context, Hit* hit);

    /// <summary>RTCIntersectContext of version 3.13; all zero asks for incoherent rays.</summary>
    [StructLayout(LayoutKind.Sequential, Size = 64)]
    private struct Context
    {
        public int Flags;
        public nint Filter;
        public uint InstanceId;
    }

    /// <summary>RTCRayHit of version 3.13.</summary>
    [StructLayout(LayoutKind.Sequential, Pack = 16, Size = 80)]
    private struct Hit
    {
        public float OX;
        public float OY;
        public float OZ;
        public float Near;
        public float DX;
        public float DY;
        public float DZ;
        public float Time;
        public float Far;
        public uint Mask;
        public uint Id;
        public uint Flags;
        public float NX;
        public float NY;
        public float NZ;
        public float U;
        public float V;
        public uint Primitive;
        public uint Geometry;
        public uint InstanceId;
    }
}
