using System.Buffers.Binary;
using Linewright.Pictures.Images;
using Linewright.Pictures.Scenes;
using Linewright.Pictures.Spectra;
using Linewright.Pictures.Transport;
using Linewright.Solids.Space;

namespace Linewright.Tests.Pictures;

/// <summary>Small pictures in linear light, kept: a change of light that no law forbids shows here.</summary>
/// <remarks>
/// Vector units round differently, so pictures are compared as pictures: every channel's mean within 1 %, every tile of eight pixels'
/// side within three standard errors or 3 %. Where one differs, the new one lies beside the old as NAME.received.pfm.
/// </remarks>
public class GoldenPictureTests
{
    private const int Side = 8;
    private static readonly PictureSize Size = new(48, 32);

    [Theory]
    [InlineData("diamond-on-paper", "diamond", GroundKind.Paper)]
    [InlineData("ruby-on-stone", "ruby", GroundKind.Stone)]
    public void A_stone_and_a_gold_ball_look_as_they_did(string name, string species, GroundKind kind)
    {
        var scene = TestScenes.Furnace.WithStone(StoneMaterial.Named(species)) with
        {
            Ground = Ground.Of(kind, -1),
            Shapes = [TestScenes.Ball(32, 0.5)],
            Metals = [new MetalInstance(0, Pose.Move(1.5, 0.2, -0.5), ConductorFinish.Polished(MetalTable.Element("Au")))],
            Lights = [AreaLight.Facing(new Vec3(-2, -2, 4), Vec3.Zero, 2, 1, 5000, 6)],
            Surroundings = new Surroundings(0.8, 0.3, 0.2, [new LightStrip(new Vec3(1, 0.4, 0.8), Vec3.UnitZ, 0.4, 0.15, 0.3, 3)], Illuminant.D65),
            Lens = Lens.Focused(new Vec3(0, -6, 3), new Vec3(0.3, 0, -0.2), 0.5, 0.05),
        };
        var picture = PathTracer.Render(
            scene, Size, new RenderSettings { MaxSamples = 256, Denoise = false, KeepGuides = true }, null, TestContext.Current.CancellationToken);
        Compare(picture, name);
    }

    private static void Compare(Picture picture, string name)
    {
        var file = Path.Combine(Repository.Root, "tests", "Linewright.Tests", "Golden", "Pictures", name + ".pfm");
        var received = Path.ChangeExtension(file, ".received.pfm");
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        using (var stream = File.Create(received))
        {
            PfmWriter.Write(stream, picture);
        }

        Assert.True(File.Exists(file), "there is no such picture yet; look at " + received + " and keep it");
        var kept = Read(file);
        for (var channel = 0; channel < 3; channel++)
        {
            double Mean(float[] colour) => Enumerable.Range(0, Size.Count).Average(i => colour[3 * i + channel]);
            Assert.InRange(Mean(picture.Colour) / Mean(kept), 0.99, 1.01);
        }

        for (var tile = 0; tile < Size.Count / (Side * Side); tile++)
        {
            double now = 0, then = 0, variance = 0;
            for (var k = 0; k < Side * Side; k++)
            {
                var at = (tile / (Size.Width / Side) * Side + k / Side) * Size.Width + tile % (Size.Width / Side) * Side + k % Side;
                now += picture.Colour[3 * at + 1];
                then += kept[3 * at + 1];
                variance += picture.Guides!.Variance[at];
            }

            Assert.InRange(Math.Abs(now - then), 0, Math.Max(3 * Math.Sqrt(2 * variance), 0.03 * then));
        }

        File.Delete(received);
    }

    private static float[] Read(string file)
    {
        var bytes = File.ReadAllBytes(file);
        var colour = new float[3 * Size.Count];
        var first = bytes.Length - 4 * colour.Length;
        for (var y = 0; y < Size.Height; y++)
        {
            for (var i = 0; i < 3 * Size.Width; i++)
            {
                colour[(Size.Height - 1 - y) * 3 * Size.Width + i] = BinaryPrimitives.ReadSingleLittleEndian(bytes.AsSpan(first + 4 * (y * 3 * Size.Width + i)));
            }
        }

        return colour;
    }
}
