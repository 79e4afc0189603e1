using System.Diagnostics;
using System.Globalization;
using Linewright.Pictures.Gpu;
using Linewright.Pictures.Images;
using Linewright.Pictures.Scenes;
using Linewright.Pictures.Spectra;
using Linewright.Pictures.Transport;
using Linewright.Solids.Meshing;
using Linewright.Solids.Polyhedra;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;
using Linewright.Stones;

namespace Linewright.Bench;

/// <summary>Ten brilliants and two gold balls on honed stone under four lamps, out of a lens: how near a picture comes to its truth in how long.</summary>
internal static class TenDiamonds
{
    private static readonly (double X, double Y)[] Places =
        [(-3.6, -0.6), (-1.3, -1.4), (1.2, -1.0), (3.5, -0.7), (-2.4, 1.4), (0, 1.3), (2.5, 1.6), (-4.4, 3.6), (-0.6, 4.0), (3.8, 4.1)];

    /// <summary>Samples that a pixel of a judged picture may take; a truth has many times more.</summary>
    private const int Most = 2048;

    /// <summary>Prints time, samples and root mean square error of red, green and blue in 8-bit sRGB against a truth of many samples.</summary>
    /// <param name="engine">cpu or gpu: what draws the pictures that are judged, and the truth.</param>
    /// <param name="truth">Samples of the truth, which is then drawn and kept as ten-diamonds-SAMPLES.pfm; or such a file.</param>
    /// <param name="targets">Noise targets to try.</param>
    public static void Run(string engine, string truth, IReadOnlyList<double> targets)
    {
        var watch = Stopwatch.StartNew();
        using var card = engine == "gpu" ? GpuEngine.Find(out _) : null;
        var size = new PictureSize(1920, 1080);
        var scene = Scene();
        var settings = new RenderSettings { MaxSamples = Most, Denoise = false, Engine = card ?? PictureEngine.Processor };
        Say($"{settings.Engine.Name}, ready in {watch.Elapsed.TotalSeconds:0.0} s");
        watch.Restart();
        var wanted = int.TryParse(truth, NumberStyles.None, CultureInfo.InvariantCulture, out var samples)
            ? Draw(scene, size, settings with { MaxSamples = samples, Seed = 99 })
            : PfmFile.Read(truth);
        var right = Development.Plain.Develop(wanted);
        Say($"truth: {truth} in {watch.Elapsed.TotalSeconds:0.0} s");
        foreach (var target in targets)
        {
            foreach (var filter in (bool[])[false, true])
            {
                watch.Restart();
                var picture = PathTracer.Render(scene, size, settings with { NoiseTarget = target, Denoise = filter, Clamp = filter ? 40 : 0 });
                var seconds = watch.Elapsed.TotalSeconds;
                Say($"target {target}, filter {filter}: {seconds:0.0} s, {picture.Noise.MeanSamples:0} samples, RMSE {Error(Development.Plain.Develop(picture), right):0.00} of 255");
            }
        }
    }

    private static Picture Draw(Scene scene, PictureSize size, RenderSettings settings)
    {
        var picture = PathTracer.Render(scene, size, settings);
        using var file = File.Create(FormattableString.Invariant($"ten-diamonds-{settings.MaxSamples}.pfm"));
        PfmWriter.Write(file, picture);
        return picture;
    }

    /// <summary>Of the three colours; alpha is 1 everywhere and would flatter.</summary>
    private static double Error(float[] drawn, float[] right)
    {
        var squares = 0.0;
        for (var i = 0; i < drawn.Length; i++)
        {
            double step = 255 * ((double)drawn[i] - right[i]);
            squares += step * step;
        }

        return Math.Sqrt(squares / (drawn.Length / 4 * 3));
    }

    private static void Say(FormattableString line) => Console.WriteLine(FormattableString.Invariant(line));

    private static Scene Scene()
    {
        var stone = RoundBrilliant.Cut(2, BrilliantProportions.Modern).Stone!.Body;
        var diamond = StoneMaterial.Named("diamond");
        var gold = ConductorFinish.Even(MetalTable.Element("Au"), 0.03);
        var ball = Mesher.Run(Shape.Ball(0.8), MeshSettings.Production).Mesh;
        Vec3 eye = new(0, -12.5, 7.2), target = new(0, 1, 0.45), sharp = new(0, -0.9, 0.6);
        var focus = (sharp - eye).Dot((target - eye).Normalised());
        return new Scene(
            new Lens(eye, target, Vec3.UnitZ, 2 * Math.Atan(0.27), focus, 0.06),
            [ball],
            [new MetalInstance(0, Pose.Move(-5.6, 1.2, 0.8), gold), new MetalInstance(0, Pose.Move(5.6, 1.6, 0.8), gold)],
            [stone],
            [.. Places.Select((place, i) => new StoneInstance(0, Lying(stone, i, place.X, place.Y), diamond))],
            new Ground(GroundKind.Stone, 0, 0.12, 0.12, 0.12),
            [
                AreaLight.Facing(new Vec3(-8, -4, 10), Vec3.Zero, 6, 4, 6504, 3.2),
                AreaLight.Facing(new Vec3(9, 3, 8), Vec3.Zero, 3, 6, 6504, 2.4),
                AreaLight.Facing(new Vec3(0, 10, 7), new Vec3(0, 1, 0), 10, 2, 6504, 2.6),
                AreaLight.Facing(new Vec3(2, -10, 12), Vec3.Zero, 1.2, 1.2, 6504, 22),
            ],
            Surroundings.Even(0.12));
    }

    /// <summary>Leaning on girdle and pavilion, every fifth on its table.</summary>
    private static Pose Lying(ConvexPolyhedron stone, int i, double x, double y)
    {
        var turn = Pose.Turn(Vec3.UnitZ, 2.4 * i).Then(Pose.Turn(Vec3.UnitX, i % 5 == 3 ? Math.PI : 0.76)).Then(Pose.Turn(Vec3.UnitZ, 0.7 * Math.Sin(5 * i)));
        var lowest = stone.Vertices.Min(v => turn.Point(v).Z);
        return turn.Then(Pose.Move(x, y, 0.0005 - lowest));
    }
}
