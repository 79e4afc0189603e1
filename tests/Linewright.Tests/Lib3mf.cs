using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using Linewright.Solids.Space;

namespace Linewright.Tests;

/// <summary>The C interface of the 3MF Consortium's library, version 1, as far as reading a model needs it.</summary>
/// <remarks>Source: lib3MF 1.8.1, Model/COM/NMR_DLLInterfaces.h; a DWORD, ULONG or BOOL there is four bytes on Linux. The last handle is left to the process to free.</remarks>
internal static class Lib3mf
{
    public const string Library = "lib3MF.so.1";

    private const int MillimetreUnit = 1;

    private delegate int Query(nint from, out nint found);

    private delegate int Text(nint from, byte[]? buffer, uint size, out uint needed);

    public static ThreeMfReading Read(string path)
    {
        Check(CreateModel(out var model));
        Check(QueryReader(model, "3mf", out var reader));
        Check(ReadFile(reader, path));
        Check(GetWarningCount(reader, out var warningCount));
        var warnings = new List<string>();
        for (uint i = 0; i < warningCount; i++)
        {
            var index = i;
            warnings.Add(Spoken(reader, (nint from, byte[]? buffer, uint size, out uint needed)
                => GetWarning(from, index, out _, buffer, size, out needed)));
        }

        Check(GetUnit(model, out var unit));
        var meshes = All(model, GetMeshObjects).Select(ReadMesh).ToList();
        var assemblies = All(model, GetComponentsObjects).Select(ReadAssembly).ToList();
        var materials = All(model, GetBaseMaterials).SelectMany(ReadMaterials).ToList();
        Check(GetBuildItems(model, out var items));
        var buildItems = 0;
        while (Check(NextBuildItem(items, out var hasNext)) && hasNext != 0)
        {
            buildItems++;
        }

        Check(Release(reader));
        Check(Release(model));
        return new ThreeMfReading(unit == MillimetreUnit, warnings, meshes, assemblies, materials, buildItems);
    }

    private static ThreeMfMesh ReadMesh(nint mesh)
    {
        Check(GetVertexCount(mesh, out var vertices));
        Check(GetTriangleCount(mesh, out var triangles));
        Check(IsManifoldAndOriented(mesh, out var manifold));
        return new ThreeMfMesh(Spoken(mesh, GetName), Spoken(mesh, GetPartNumber), (int)vertices, (int)triangles, manifold != 0);
    }

    private static ThreeMfAssembly ReadAssembly(nint assembly)
    {
        Check(GetComponentCount(assembly, out var count));
        var placements = new List<Pose>();
        for (uint i = 0; i < count; i++)
        {
            Check(GetComponent(assembly, i, out var component));
            // Three rows of four: a matrix that acts on columns, the origin in the last column.
            var m = new float[12];
            Check(GetTransform(component, m));
            placements.Add(new Pose(new Vec3(m[0], m[4], m[8]), new Vec3(m[1], m[5], m[9]), new Vec3(m[2], m[6], m[10]), new Vec3(m[3], m[7], m[11])));
        }

        return new ThreeMfAssembly(Spoken(assembly, GetName), placements);
    }

    private static IEnumerable<string> ReadMaterials(nint group)
    {
        Check(GetMaterialCount(group, out var count));
        for (uint i = 0; i < count; i++)
        {
            var index = i;
            yield return Spoken(group, (nint from, byte[]? buffer, uint size, out uint needed)
                => GetMaterialName(from, index, buffer, size, out needed));
        }
    }

    private static List<nint> All(nint model, Query query)
    {
        Check(query(model, out var iterator));
        var found = new List<nint>();
        while (Check(NextResource(iterator, out var hasNext)) && hasNext != 0)
        {
            Check(CurrentResource(iterator, out var resource));
            found.Add(resource);
        }

        return found;
    }

    private static string Spoken(nint from, Text text)
    {
        Check(text(from, null, 0, out var needed));
        var buffer = new byte[needed + 1];
        Check(text(from, buffer, needed + 1, out _));
        return Encoding.UTF8.GetString(buffer).TrimEnd('\0');
    }

    private static bool Check(int result)
        => result == 0 ? true : throw new InvalidDataException(string.Create(CultureInfo.InvariantCulture, $"lib3MF refuses with code {result:X}"));

    [DllImport(Library, EntryPoint = "lib3mf_createmodel")]
    private static extern int CreateModel(out nint model);

    [DllImport(Library, EntryPoint = "lib3mf_release")]
    private static extern int Release(nint instance);

    [DllImport(Library, EntryPoint = "lib3mf_model_queryreader")]
    private static extern int QueryReader(nint model, [MarshalAs(UnmanagedType.LPUTF8Str)] string format, out nint reader);

    [DllImport(Library, EntryPoint = "lib3mf_reader_readfromfileutf8")]
    private static extern int ReadFile(nint reader, [MarshalAs(UnmanagedType.LPUTF8Str)] string path);

    [DllImport(Library, EntryPoint = "lib3mf_reader_getwarningcount")]
    private static extern int GetWarningCount(nint reader, out uint count);

    [DllImport(Library, EntryPoint = "lib3mf_reader_getwarningutf8")]
    private static extern int GetWarning(nint reader, uint index, out uint code, [Out] byte[]? buffer, uint size, out uint needed);

    [DllImport(Library, EntryPoint = "lib3mf_model_getunit")]
    private static extern int GetUnit(nint model, out uint unit);

    [DllImport(Library, EntryPoint = "lib3mf_model_getmeshobjects")]
    private static extern int GetMeshObjects(nint model, out nint iterator);

    [DllImport(Library, EntryPoint = "lib3mf_model_getcomponentsobjects")]
    private static extern int GetComponentsObjects(nint model, out nint iterator);

    [DllImport(Library, EntryPoint = "lib3mf_model_getbasematerials")]
    private static extern int GetBaseMaterials(nint model, out nint iterator);

    [DllImport(Library, EntryPoint = "lib3mf_model_getbuilditems")]
    private static extern int GetBuildItems(nint model, out nint iterator);

    [DllImport(Library, EntryPoint = "lib3mf_builditemiterator_movenext")]
    private static extern int NextBuildItem(nint iterator, out int hasNext);

    [DllImport(Library, EntryPoint = "lib3mf_resourceiterator_movenext")]
    private static extern int NextResource(nint iterator, out int hasNext);

    [DllImport(Library, EntryPoint = "lib3mf_resourceiterator_getcurrent")]
    private static extern int CurrentResource(nint iterator, out nint resource);

    [DllImport(Library, EntryPoint = "lib3mf_object_getnameutf8")]
    private static extern int GetName(nint resource, [Out] byte[]? buffer, uint size, out uint needed);

    [DllImport(Library, EntryPoint = "lib3mf_object_getpartnumberutf8")]
    private static extern int GetPartNumber(nint resource, [Out] byte[]? buffer, uint size, out uint needed);

    [DllImport(Library, EntryPoint = "lib3mf_meshobject_getvertexcount")]
    private static extern int GetVertexCount(nint mesh, out uint count);

    [DllImport(Library, EntryPoint = "lib3mf_meshobject_gettrianglecount")]
    private static extern int GetTriangleCount(nint mesh, out uint count);

    [DllImport(Library, EntryPoint = "lib3mf_meshobject_ismanifoldandoriented")]
    private static extern int IsManifoldAndOriented(nint mesh, out int manifold);

    [DllImport(Library, EntryPoint = "lib3mf_componentsobject_getcomponentcount")]
    private static extern int GetComponentCount(nint assembly, out uint count);

    [DllImport(Library, EntryPoint = "lib3mf_componentsobject_getcomponent")]
    private static extern int GetComponent(nint assembly, uint index, out nint component);

    [DllImport(Library, EntryPoint = "lib3mf_component_gettransform")]
    private static extern int GetTransform(nint component, [Out] float[] transform);

    [DllImport(Library, EntryPoint = "lib3mf_basematerial_getcount")]
    private static extern int GetMaterialCount(nint group, out uint count);

    [DllImport(Library, EntryPoint = "lib3mf_basematerial_getnameutf8")]
    private static extern int GetMaterialName(nint group, uint index, [Out] byte[]? buffer, uint size, out uint needed);
}

/// <summary>What lib3MF understood of a 3MF file.</summary>
public sealed record ThreeMfReading(
    bool IsInMillimetres, IReadOnlyList<string> Warnings, IReadOnlyList<ThreeMfMesh> Meshes, IReadOnlyList<ThreeMfAssembly> Assemblies,
    IReadOnlyList<string> Materials, int BuildItems);

/// <summary>One mesh object as lib3MF holds it.</summary>
public sealed record ThreeMfMesh(string Name, string PartNumber, int Vertices, int Triangles, bool IsManifold);

/// <summary>One component object: where each of its components lies, mm.</summary>
public sealed record ThreeMfAssembly(string Name, IReadOnlyList<Pose> Placements);
