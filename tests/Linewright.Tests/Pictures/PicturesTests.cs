using System.Buffers.Binary;
using System.IO.Compression;
using Linewright.Pictures.Denoising;
using Linewright.Pictures.Images;
using Linewright.Pictures.Scenes;
using Linewright.Pictures.Spectra;
using Linewright.Pictures.Transport;
using Linewright.Solids.Space;

namespace Linewright.Tests.Pictures;

public class PicturesTests
{
    private static readonly Scene Small = TestScenes.Furnace.WithStone(StoneMaterial.Named("diamond")) with
    {
        Ground = Ground.Of(GroundKind.Paper, -1),
        Shapes = [TestScenes.Ball(24, 0.5)],
        Metals = [new MetalInstance(0, Pose.Move(1.4, 0, -0.5), ConductorFinish.Polished(MetalTable.Element("Au")))],
        Lights = [AreaLight.Facing(new Vec3(-2, -2, 4), Vec3.Zero, 2, 1, 5000, 6)],
        Surroundings = new Surroundings(0.8, 0.3, 0.2, [], Illuminant.D65),
        Lens = Lens.Focused(new Vec3(0, -6, 3), Vec3.Zero, 0.5, 0.05),
    };

    [Fact]
    public void The_same_seed_gives_the_same_picture_on_any_number_of_threads()
    {
        var size = new PictureSize(40, 24);
        var settings = new RenderSettings { NoiseTarget = 0.1, MaxSamples = 64, Clamp = 20 };
        var one = Draw(Small, size, settings with { Threads = 1 });
        var three = Draw(Small, size, settings with { Threads = 3 });
        Assert.Equal(one.Colour, three.Colour);
        Assert.NotEqual(one.Colour, Draw(Small, size, settings with { Seed = 2 }).Colour);
    }

    [Fact]
    public void More_samples_and_the_filter_bring_a_picture_nearer_to_the_truth()
    {
        var size = new PictureSize(48, 32);
        var raw = new RenderSettings { MaxSamples = 16, Denoise = false };
        var truth = Draw(Small, size, raw with { MaxSamples = 2048, Seed = 9 });
        double Error(RenderSettings settings)
        {
            float[] a = Development.Plain.Develop(truth), b = Development.Plain.Develop(Draw(Small, size, settings));
            return Math.Sqrt(a.Zip(b, (x, y) => (double)(x - y) * (x - y)).Average());
        }

        var few = Error(raw);
        Assert.True(Error(raw with { MaxSamples = 128 }) < 0.55 * few);
        Assert.True(Error(raw with { Denoise = true }) < 0.8 * few);
    }

    [Fact]
    public void Sampling_stops_where_it_is_quiet_and_the_estimate_is_kept()
    {
        var picture = Draw(Small, new PictureSize(64, 48), new RenderSettings { NoiseTarget = 0.08, MaxSamples = 1024, KeepGuides = true });
        Assert.InRange(picture.Noise.MeanSamples, 17, 700);
        Assert.True(picture.Noise.Tiles.Count(t => t <= 0.081) > 0.7 * picture.Noise.Tiles.Length);
        Assert.Equal(picture.Size.Count, picture.Guides!.Facet.Length);
        Assert.Contains(picture.Guides.Facet, f => f == 1);
        Assert.Contains(picture.Guides.Facet, f => f == 2);
        Assert.True(picture.Guides.Facet.Where(f => f > 2).Distinct().Count() > 10, "facets of the stone are told apart");
    }

    [Fact]
    public void The_filter_evens_out_noise_and_never_takes_from_another_facet()
    {
        // Left half facet 5 at 0.4, right half facet 6 at 0.6, noise of 0.1 a half: were they one facet, they would mix.
        const int width = 48, height = 24;
        var random = new Random(4);
        float Noise() => 0.1f * (float)(Enumerable.Range(0, 12).Sum(_ => random.NextDouble()) - 6);
        var pixels = Enumerable.Range(0, width * height).Select(i =>
        {
            var left = i % width < width / 2;
            float light = left ? 0.4f : 0.6f, a = light + Noise(), b = light + Noise();
            return new FilterPixel { First = (a, a, a), Second = (b, b, b), Variance = 0.01f, Albedo = (1, 1, 1), Normal = (0, 0, 1), Facet = left ? 5 : 6 };
        }).ToArray();
        var colour = new float[3 * pixels.Length];
        JointFilter.Run(width, height, (x, y) => pixels[y * width + x], colour, null, new ParallelOptions { MaxDegreeOfParallelism = 2, CancellationToken = TestContext.Current.CancellationToken });
        double squares = 0;
        for (var i = 0; i < pixels.Length; i++)
        {
            var truth = i % width < width / 2 ? 0.4 : 0.6;
            squares += (colour[3 * i] - truth) * (colour[3 * i] - truth);
        }

        // Before: 0.1 / sqrt 2 = 0.071.
        Assert.InRange(Math.Sqrt(squares / pixels.Length), 0, 0.02);
        for (var x = width / 2 - 2; x < width / 2 + 2; x++)
        {
            var column = Enumerable.Range(0, height).Average(y => colour[3 * (y * width + x)]);
            Assert.Equal(x < width / 2 ? 0.4 : 0.6, column, 0.03);
        }
    }

    [Fact]
    public void A_picture_can_be_stopped_and_tells_how_far_it_is()
    {
        using var stop = new CancellationTokenSource();
        var told = new Told(stop);
        Assert.ThrowsAny<OperationCanceledException>(() => PathTracer.Render(Small, new PictureSize(32, 24), new RenderSettings { MaxSamples = 4096 }, told, stop.Token));
        Assert.Equal(1, told.Last!.Pass);
        Assert.Equal(32 * 24 * 3, told.Shown!.Colour.Length);
        Assert.InRange(told.Last.Share, 0, 1);
    }

    [Fact]
    public void A_picture_that_shows_early_is_the_same_picture()
    {
        var stop = TestContext.Current.CancellationToken;
        var settings = new RenderSettings { NoiseTarget = 0.3, MaxSamples = 64 };
        var told = new List<PictureProgress>();
        var size = new PictureSize(32, 24);
        var early = PathTracer.Render(Small, size, settings with { ShowsEarly = true }, new Listed(told), stop);
        var late = PathTracer.Render(Small, size, settings, new Listed([]), stop);
        Assert.Equal(late.Colour, early.Colour);
        Assert.Equal(late.Noise.MeanSamples, early.Noise.MeanSamples);
        Assert.Equal([1, 2, 3, 4], told.Take(4).Select(progress => progress.Pass));
        Assert.Equal([1, 2, 4, 8], told.Take(4).Select(progress => progress.Samples / size.Count));
        Assert.True(double.IsNaN(told[0].Noise) && told.Skip(1).All(progress => double.IsFinite(progress.Noise)));
        Assert.Equal(told.Select(progress => progress.Share).Order(), told.Select(progress => progress.Share));
    }

    [Fact]
    public void A_transparent_ground_keeps_only_its_shadow()
    {
        var scene = Small with { Ground = Small.Ground! with { Transparent = true }, Surroundings = Small.Surroundings with { Seen = false } };
        var picture = Draw(scene, new PictureSize(48, 32), new RenderSettings { MaxSamples = 64 });
        Assert.True(picture.Alpha.Min() < 0.1);
        Assert.True(picture.Alpha.Max() > 0.99);
        Assert.Contains(picture.Alpha, a => a is > 0.1f and < 0.9f);
    }

    [Theory]
    [InlineData(8)]
    [InlineData(16)]
    public void A_png_can_be_read_back(int bits)
    {
        var picture = new Picture(new PictureSize(3, 2), [0, 0.5f, 1, 0.1f, 0.2f, 0.3f, 1, 1, 1, 0, 0, 0, 2, 0.5f, 0.1f, 0.4f, 0.4f, 0.4f], [1, 1, 1, 1, 1, 1], Quiet, null);
        using var stream = new MemoryStream();
        PngWriter.Write(stream, picture, Development.Plain, bits);
        var bytes = stream.ToArray();

        // Source: ISO/IEC 15948: the end chunk's check sum is AE 42 60 82.
        Assert.Equal([0xAE, 0x42, 0x60, 0x82], bytes[^4..]);
        var at = bytes.AsSpan().IndexOf("IDAT"u8);
        var length = BinaryPrimitives.ReadInt32BigEndian(bytes.AsSpan(at - 4));
        using var zlib = new ZLibStream(new MemoryStream(bytes, at + 4, length), CompressionMode.Decompress);
        using var rows = new MemoryStream();
        zlib.CopyTo(rows);
        var data = rows.ToArray();
        var width = 3 * 3 * bits / 8;
        Assert.Equal(2 * (width + 1), data.Length);
        Assert.Equal(2, data[0]);

        // 0.5 in linear light is 188 of 255 (IEC 61966-2-1: 0.73536).
        Assert.Equal(188, bits == 8 ? data[2] : (int)Math.Round(BinaryPrimitives.ReadUInt16BigEndian(data.AsSpan(3)) / 257.0));
        Assert.Equal(255, data[1 + 2 * bits / 8]);
    }

    [Theory]
    [InlineData(8)]
    [InlineData(16)]
    public void A_large_png_is_written_in_chunks_that_join_to_its_rows(int bits)
    {
        // Noise does not pack, so that there is more than one chunk; 75 rows are no whole number of bands.
        var size = new PictureSize(310, 75);
        var random = new Random(5);
        var picture = new Picture(size, [.. Enumerable.Range(0, 3 * size.Count).Select(_ => random.NextSingle())], [.. Enumerable.Repeat(1f, size.Count)], Quiet, null);
        using var stream = new MemoryStream();
        PngWriter.Write(stream, picture, Development.Plain, bits);
        var bytes = stream.ToArray();

        // Length, name, data, check sum, one chunk after the other. Source: ISO/IEC 15948, 5.3.
        using var packed = new MemoryStream();
        var (at, count) = (8, 0);
        for (string name = ""; name != "IEND";)
        {
            var length = BinaryPrimitives.ReadInt32BigEndian(bytes.AsSpan(at));
            name = System.Text.Encoding.ASCII.GetString(bytes, at + 4, 4);
            if (name == "IDAT")
            {
                packed.Write(bytes, at + 8, length);
                count++;
            }

            at += length + 12;
        }

        Assert.Equal(bytes.Length, at);
        Assert.True(count > 1, FormattableString.Invariant($"{count} chunk"));
        packed.Position = 0;
        using var zlib = new ZLibStream(packed, CompressionMode.Decompress);
        using var rows = new MemoryStream();
        zlib.CopyTo(rows);
        var data = rows.ToArray();
        var width = size.Width * 3 * bits / 8;
        Assert.Equal(size.Height * (width + 1), data.Length);
        var developed = Development.Plain.Develop(picture);
        var above = new byte[width];
        for (var y = 0; y < size.Height; y++)
        {
            Assert.Equal(2, data[y * (width + 1)]);
            for (var i = 0; i < width; i++)
            {
                above[i] += data[y * (width + 1) + 1 + i];
            }

            for (var i = 0; i < size.Width * 3; i++)
            {
                var value = bits == 8 ? above[i] / 255.0 : BinaryPrimitives.ReadUInt16BigEndian(above.AsSpan(2 * i)) / 65535.0;
                Assert.Equal(developed[4 * (y * size.Width + i / 3) + i % 3], value, bits == 8 ? 0.5 / 255 + 1e-6 : 0.5 / 65535 + 1e-6);
            }
        }
    }

    [Fact]
    public void A_float_map_keeps_every_bit_bottom_row_first()
    {
        var picture = new Picture(new PictureSize(1, 2), [-0.25f, 7, 1e-9f, 4, 5, 6], [1, 1], Quiet, null);
        using var stream = new MemoryStream();
        PfmWriter.Write(stream, picture);
        var bytes = stream.ToArray();
        Assert.StartsWith("PF\n1 2\n-1.0\n", System.Text.Encoding.ASCII.GetString(bytes), StringComparison.Ordinal);
        Assert.Equal([4f, 5f, 6f, -0.25f, 7f, 1e-9f], Enumerable.Range(0, 6).Select(i => BinaryPrimitives.ReadSingleLittleEndian(bytes.AsSpan(bytes.Length - 24 + 4 * i))));
    }

    [Fact]
    public void Developing_keeps_the_middle_bends_the_bright_and_balances_the_white()
    {
        Picture One(float r, float g, float b) => new(new PictureSize(1, 1), [r, g, b], [1], Quiet, null);
        var grey = new Development().Develop(One(0.18f, 0.18f, 0.18f));
        Assert.Equal(Development.Encode(0.18), grey[0], 1e-4f);
        var bright = new Development().Develop(One(3, 3, 3));
        Assert.InRange(bright[0], 0.98f, 1f);
        Assert.True(new Development().Develop(One(1, 1, 1))[0] < bright[0], "what is brighter stays brighter");

        // Fire outside sRGB keeps its luminance and loses only as much colour as it must.
        var fire = Development.Plain.Develop(One(-0.2f, 0.1f, 0.9f));
        Assert.Equal(0, fire[0], 1e-5f);
        Assert.True(fire[2] > fire[1]);

        var lamp = Observer.Sum(Illuminant.A);
        var (red, green, blue) = new Tristimulus(lamp.X / lamp.Y * 0.5, 0.5, lamp.Z / lamp.Y * 0.5).ToLinear();
        var white = new Development(White: Illuminant.A).Develop(One((float)red, (float)green, (float)blue));
        Assert.Equal(white[0], white[1], 2e-3f);
        Assert.Equal(white[1], white[2], 2e-3f);
    }

    private static Picture Draw(Scene scene, PictureSize size, RenderSettings settings)
        => PathTracer.Render(scene, size, settings, null, TestContext.Current.CancellationToken);

    private static NoiseEstimate Quiet => new(16, 1, [0], 0, 1);

    private sealed class Listed(List<PictureProgress> told) : IProgress<PictureProgress>
    {
        public void Report(PictureProgress value) => told.Add(value);
    }

    private sealed class Told(CancellationTokenSource stop) : IProgress<PictureProgress>
    {
        public PictureProgress? Last { get; private set; }

        public Picture? Shown { get; private set; }

        public void Report(PictureProgress value)
        {
            Last = value;
            Shown = value.SoFar();
            stop.Cancel();
        }
    }
}
