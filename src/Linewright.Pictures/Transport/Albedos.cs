namespace Linewright.Pictures.Transport;

/// <summary>Reads <see cref="AlbedoTable"/> between its places.</summary>
internal static class Albedos
{
    public static float Mirrors<TWorld>(ref TWorld world, float cosine, float rough)
        where TWorld : struct, IWorld => Read(ref world, 0, cosine, rough);

    public static float Coat<TWorld>(ref TWorld world, float cosine, float rough)
        where TWorld : struct, IWorld => Read(ref world, AlbedoTable.Angles * AlbedoTable.Roughnesses, cosine, rough);

    private static float Read<TWorld>(ref TWorld world, int first, float cosine, float rough)
        where TWorld : struct, IWorld
    {
        float a = AlbedoTable.AnglePlace(MathF.Min(1f, MathF.Max(0f, cosine))), r = AlbedoTable.RoughnessPlace(MathF.Min(1f, rough));
        int ia = Math.Min((int)a, AlbedoTable.Angles - 2), ir = Math.Min((int)r, AlbedoTable.Roughnesses - 2);
        float ta = a - ia, tr = r - ir;
        var at = first + ir * AlbedoTable.Angles + ia;
        float p = world.Albedo(at), q = world.Albedo(at + 1), s = world.Albedo(at + AlbedoTable.Angles), t = world.Albedo(at + AlbedoTable.Angles + 1);
        return (p + (q - p) * ta) * (1 - tr) + (s + (t - s) * ta) * tr;
    }
}
