using System.Buffers.Binary;
using System.Numerics;
using Linewright.Solids.Space;
using SharpGLTF.Memory;
using SharpGLTF.Schema2;
using SharpGLTF.Transforms;

namespace Linewright.Files;

/// <summary>Writes an assembly as binary glTF 2.0 for viewers: one mesh per unique part, one named node per instance.</summary>
/// <remarks>
/// Format: Khronos, glTF 2.0 specification, with KHR_materials_transmission, _ior and _volume on clear materials.
/// glTF counts in metres with y up. Only the root node knows: it turns and scales, and everything under it stays
/// in our millimetres with z up. The same scene gives the same bytes.
/// </remarks>
public static class GlbWriter
{
    private const float MetresPerMm = 0.001f;

    // About x, from z up to y up.
    private static readonly Quaternion QuarterTurnBack = new(-MathF.Sqrt(0.5f), 0, 0, MathF.Sqrt(0.5f));

    /// <summary>Most vertices that two-byte indices reach; 65535 itself is reserved. Source: glTF 2.0, 3.7.2.1.</summary>
    private const int ShortIndexLimit = 65535;

    /// <summary>Writes the scene and leaves the stream open.</summary>
    public static void Write(Stream stream, FileScene scene)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(scene);
        var model = ModelRoot.CreateModel();
        model.Asset.Generator = "Linewright";
        var root = model.UseScene(scene.Name).CreateNode(scene.Name);
        root.LocalTransform = new AffineTransform(new Vector3(MetresPerMm), QuarterTurnBack, Vector3.Zero);

        var materials = new Dictionary<FileMaterial, Material>();
        foreach (var part in scene.Parts)
        {
            var mesh = WriteMesh(model, part, MaterialFor(model, materials, part));
            foreach (var instance in part.Instances)
            {
                var node = root.CreateNode(instance.Name);
                node.Mesh = mesh;
                node.LocalTransform = new AffineTransform(Vector3.One, Turn(instance.Pose), Place(instance.Pose.Origin));
            }
        }

        model.DefaultScene = model.LogicalScenes[0];
        model.MergeBuffers();
        model.WriteGLB(stream);
    }

    private static SharpGLTF.Schema2.Mesh WriteMesh(ModelRoot model, MeshPart part, Material material)
    {
        var shaded = part.Shading ?? (part.Faceted ? CreasedNormals.Flat(part.Mesh) : CreasedNormals.Smooth(part.Mesh));
        var mesh = model.CreateMesh(part.Name);
        var primitive = mesh.CreatePrimitive();
        primitive.DrawPrimitiveType = PrimitiveType.TRIANGLES;
        primitive.Material = material;
        primitive.SetVertexAccessor("POSITION", Vertices(model, shaded.Positions));
        primitive.SetVertexAccessor("NORMAL", Vertices(model, shaded.Normals));
        primitive.SetIndexAccessor(Indices(model, shaded.Triangles, shaded.Positions.Count / 3));
        return mesh;
    }

    private static Accessor Vertices(ModelRoot model, IReadOnlyList<float> numbers)
    {
        var bytes = new byte[numbers.Count * sizeof(float)];
        for (var i = 0; i < numbers.Count; i++)
        {
            BinaryPrimitives.WriteSingleLittleEndian(bytes.AsSpan(i * sizeof(float)), numbers[i]);
        }

        var accessor = model.CreateAccessor();
        accessor.SetVertexData(model.UseBufferView(bytes, 0, null, 0, BufferMode.ARRAY_BUFFER), 0, numbers.Count / 3, AttributeFormat.Float3);
        return accessor;
    }

    private static Accessor Indices(ModelRoot model, IReadOnlyList<int> indices, int vertices)
    {
        var isShort = vertices <= ShortIndexLimit;
        var size = isShort ? sizeof(ushort) : sizeof(uint);
        var bytes = new byte[indices.Count * size];
        for (var i = 0; i < indices.Count; i++)
        {
            var at = bytes.AsSpan(i * size);
            if (isShort)
            {
                BinaryPrimitives.WriteUInt16LittleEndian(at, (ushort)indices[i]);
            }
            else
            {
                BinaryPrimitives.WriteUInt32LittleEndian(at, (uint)indices[i]);
            }
        }

        var accessor = model.CreateAccessor();
        var view = model.UseBufferView(bytes, 0, null, 0, BufferMode.ELEMENT_ARRAY_BUFFER);
        accessor.SetIndexData(view, 0, indices.Count, isShort ? IndexEncodingType.UNSIGNED_SHORT : IndexEncodingType.UNSIGNED_INT);
        return accessor;
    }

    private static Material MaterialFor(ModelRoot model, Dictionary<FileMaterial, Material> known, MeshPart part)
    {
        if (!known.TryGetValue(part.Material, out var material))
        {
            material = WriteMaterial(model, part);
            known.Add(part.Material, material);
        }

        return material;
    }

    private static Material WriteMaterial(ModelRoot model, MeshPart part)
    {
        var from = part.Material;
        var material = model.CreateMaterial(from.Name);
        if (from.RefractiveIndex is { } index)
        {
            material.InitializePBRMetallicRoughness("Transmission", "Volume");
            material.IndexOfRefraction = (float)index;
            Set(material, "Transmission", "TransmissionFactor", 1f);
            // Viewers bend light once, over this depth; the part's smallest extent is what the eye looks through.
            var size = part.Mesh.Bounds.Size;
            Set(material, "VolumeThickness", "ThicknessFactor", (float)Math.Min(size.X, Math.Min(size.Y, size.Z)));
        }
        else
        {
            material.InitializePBRMetallicRoughness();
        }

        Set(material, "BaseColor", "RGBA", new Vector4((float)from.Red, (float)from.Green, (float)from.Blue, 1));
        Set(material, "MetallicRoughness", "MetallicFactor", (float)from.Metallic);
        Set(material, "MetallicRoughness", "RoughnessFactor", (float)from.Roughness);
        return material;
    }

    private static void Set(Material material, string channel, string parameter, object value)
    {
        var found = material.FindChannel(channel) ?? throw new InvalidOperationException($"glTF materials have no channel {channel}");
        found.Parameters.Single(p => string.Equals(p.Name, parameter, StringComparison.Ordinal)).Value = value;
    }

    private static Vector3 Place(Vec3 p) => new(SteadyPose.Place(p.X), SteadyPose.Place(p.Y), SteadyPose.Place(p.Z));

    private static Quaternion Turn(Pose pose)
    {
        // Source: Shepperd (1978), Quaternion from rotation matrix: divide by the largest of the four, never by one near zero.
        double xx = pose.AxisX.X, yy = pose.AxisY.Y, zz = pose.AxisZ.Z;
        double w = 1 + xx + yy + zz, x = 1 + xx - yy - zz, y = 1 - xx + yy - zz, z = 1 - xx - yy + zz;
        double yzTurn = pose.AxisY.Z - pose.AxisZ.Y, zxTurn = pose.AxisZ.X - pose.AxisX.Z, xyTurn = pose.AxisX.Y - pose.AxisY.X;
        double xy = pose.AxisX.Y + pose.AxisY.X, xz = pose.AxisX.Z + pose.AxisZ.X, yz = pose.AxisY.Z + pose.AxisZ.Y;
        var (qx, qy, qz, qw) = Math.Max(Math.Max(w, x), Math.Max(y, z)) switch
        {
            var most when most == w => (yzTurn, zxTurn, xyTurn, w),
            var most when most == x => (x, xy, xz, yzTurn),
            var most when most == y => (xy, y, yz, zxTurn),
            _ => (xz, yz, z, xyTurn),
        };
        var length = Math.Sqrt(qx * qx + qy * qy + qz * qz + qw * qw);
        return new Quaternion(
            SteadyPose.Axis(qx / length), SteadyPose.Axis(qy / length), SteadyPose.Axis(qz / length), SteadyPose.Axis(qw / length));
    }
}
