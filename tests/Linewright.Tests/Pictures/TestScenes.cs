using Linewright.Pictures.Images;
using Linewright.Pictures.Scenes;
using Linewright.Pictures.Transport;
using Linewright.Solids.Meshing;
using Linewright.Solids.Space;

namespace Linewright.Tests.Pictures;

/// <summary>Small scenes and shapes for the tests of light.</summary>
internal static class TestScenes
{
    /// <summary>Nothing but light of 1 from everywhere.</summary>
    public static Scene Furnace => new(
        Lens.Focused(new Vec3(0, -6, 3), Vec3.Zero, 0.25, 0), [], [], [], [], null, [], Surroundings.Even(1));

    /// <summary>A ball of metal of radius 1 at the origin.</summary>
    public static Scene WithBall(this Scene scene, ConductorFinish finish)
        => scene with { Shapes = [Ball(64, 1)], Metals = [new MetalInstance(0, Pose.Identity, finish)] };

    /// <summary>A round brilliant of radius 1, lying tilted at the origin.</summary>
    public static Scene WithStone(this Scene scene, StoneMaterial material)
        => scene with { Bodies = [Brilliant.Of(56, 34.5, 40.75)], Stones = [new StoneInstance(0, Pose.Turn(Vec3.UnitX, 0.4), material)] };

    /// <summary>Mean red, green, blue of a picture, and the standard error of its luminance.</summary>
    public static (double Red, double Green, double Blue, double Error) Mean(Scene scene, RenderSettings settings, int side = 12)
    {
        var picture = PathTracer.Render(scene, new PictureSize(side, side), settings with { KeepGuides = true, Denoise = false });
        double[] sum = new double[3];
        for (var i = 0; i < picture.Colour.Length; i++)
        {
            sum[i % 3] += picture.Colour[i];
        }

        double count = picture.Size.Count;
        return (sum[0] / count, sum[1] / count, sum[2] / count, Math.Sqrt(picture.Guides!.Variance.Sum(v => (double)v)) / count);
    }

    /// <summary>A ball of rings and sectors, closed.</summary>
    public static Mesh Ball(int rings, double radius)
    {
        var sectors = 2 * rings;
        List<float> positions = [0, 0, (float)radius, 0, 0, (float)-radius];
        for (var i = 1; i < rings; i++)
        {
            for (var j = 0; j < sectors; j++)
            {
                double a = Math.PI * i / rings, b = 2 * Math.PI * j / sectors;
                positions.AddRange([(float)(radius * Math.Sin(a) * Math.Cos(b)), (float)(radius * Math.Sin(a) * Math.Sin(b)), (float)(radius * Math.Cos(a))]);
            }
        }

        int At(int ring, int sector) => 2 + (ring - 1) * sectors + sector % sectors;
        List<int> triangles = [];
        for (var j = 0; j < sectors; j++)
        {
            triangles.AddRange([0, At(1, j), At(1, j + 1), 1, At(rings - 1, j + 1), At(rings - 1, j)]);
            for (var i = 1; i < rings - 1; i++)
            {
                triangles.AddRange([At(i, j), At(i + 1, j), At(i + 1, j + 1), At(i, j), At(i + 1, j + 1), At(i, j + 1)]);
            }
        }

        return new Mesh([.. positions], [.. triangles]);
    }
}
