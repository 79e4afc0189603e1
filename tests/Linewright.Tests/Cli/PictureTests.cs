using System.Text;
using Linewright.Cli;
using Linewright.Pictures.Transport;
using Linewright.Staging;

namespace Linewright.Tests.Cli;

public sealed class PictureTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("linewright-tests-").FullName;
    private readonly List<PictureOrder> orders = [];

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void A_picture_is_written_where_it_was_asked_for_and_said_so()
    {
        var file = Path.Combine(folder, "a.png");
        var (code, output, _) = Run(["--scene", "link", "--size", "64x32", "--out", file]);
        Assert.Equal(ExitCode.Done, code);
        Assert.Equal([file], Directory.GetFiles(folder, "*.p*"));

        // A PNG begins so and has its size in the first chunk. Source: ISO/IEC 15948, 5.2 and 11.2.2.
        var bytes = File.ReadAllBytes(file);
        Assert.Equal([0x89, (byte)'P', (byte)'N', (byte)'G'], bytes[..4]);
        Assert.Equal([0, 0, 0, 64, 0, 0, 0, 32, 8], bytes[16..25]);
        Assert.StartsWith($"{file}  64 x 32, good, 12 samples a pixel, noise 5.0 % before the filter", output, StringComparison.Ordinal);
    }

    [Fact]
    public void Sixteen_bits_and_linear_light_are_written_as_such()
    {
        string png = Path.Combine(folder, "a.png"), pfm = Path.Combine(folder, "a.pfm");
        Run(["--scene", "link", "--size", "16x16", "--bits", "16", "--out", png]);
        Run(["--scene", "link", "--size", "16x16", "--out", pfm]);
        Assert.Equal(16, File.ReadAllBytes(png)[24]);
        Assert.StartsWith("PF", Encoding.ASCII.GetString(File.ReadAllBytes(pfm)[..2]), StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_asked_for_reaches_the_photographer()
    {
        Run(["--scene", "draped", "--size", "64x48", "--quality", "final", "--ground", "cloth", "--transparent", "--focus", "7", "--seed", "9", "--denoise", "off", "--out", Path.Combine(folder, "a.png")]);
        var order = Assert.Single(orders);
        Assert.Equal((SceneKind.Draped, StageGround.Cloth, true, (int?)7), (order.Stage.Scene, order.Stage.Ground, order.Stage.IsTransparent, order.Stage.FocusStone));
        Assert.Equal((RenderQuality.Final, 9u, false), (order.Quality, order.Seed, order.Denoise));
    }

    [Fact]
    public void Frames_are_numbered_and_go_once_round()
    {
        Run(["--scene", "closed", "--size", "16x16", "--frames", "3", "--out", Path.Combine(folder, "turn.png")]);
        Assert.Equal(["turn-0001.png", "turn-0002.png", "turn-0003.png"], Directory.GetFiles(folder, "*.png").Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.Equal([0, 2 * Math.PI / 3, 4 * Math.PI / 3], orders.Select(order => order.Stage.Turn));
    }

    [Theory]
    [InlineData("--size 10", "--size: read '10', expected WIDTHxHEIGHT")]
    [InlineData("--size 0x100", "each 16 to 16384")]
    [InlineData("--out a.png", "--out: read one file for two pictures")]
    [InlineData("--scene link --out a.jpg", "expected a name that ends in .png or .pfm")]
    [InlineData("--scene link --focus 999", "--focus: read 999, expected a stone of this line, 1 to ")]
    [InlineData("--scene link --frames 0", "--frames: read 0, expected 1 to ")]
    [InlineData("--frames 4", "expected the one that turns")]
    [InlineData("--scene hanging", "hanging")]
    [InlineData("--quality best", "best")]
    public void Wrong_wishes_end_with_2_before_anything_is_drawn(string wishes, string said)
    {
        var (code, output, error) = Run(wishes.Split(' '));
        Assert.Equal(ExitCode.Asked, code);
        Assert.Empty(output);
        Assert.Contains(said, error, StringComparison.Ordinal);
        Assert.Empty(orders);
    }

    [Fact]
    public void A_place_that_cannot_be_written_is_known_before_the_drawing()
    {
        var (code, _, error) = Run(["--scene", "link", "--out", Path.Combine(folder, "none", "a.png")]);
        Assert.Equal(ExitCode.Ours, code);
        Assert.Contains("cannot be written", error, StringComparison.Ordinal);
        Assert.Empty(orders);
    }

    [Fact]
    public void Stopped_it_leaves_no_file()
    {
        using var stop = new CancellationTokenSource();
        var (code, _, _) = Run(["--scene", "link", "--size", "16x16", "--out", Path.Combine(folder, "a.png")], _ => stop.Cancel(), stop.Token);
        Assert.Equal(ExitCode.Stopped, code);
        Assert.Empty(Directory.GetFiles(folder, "a*"));
    }

    private (int Code, string Output, string Error) Run(string[] wishes, Action<PictureOrder>? drawing = null, CancellationToken? stop = null)
    {
        var brief = Path.Combine(folder, "brief.json");
        File.WriteAllText(brief, SampleReport.Brief);
        using var output = new MemoryStream();
        using var error = new StringWriter();
        var desk = new Desk
        {
            In = Stream.Null,
            Out = output,
            Error = error,
            Workbench = new SampleWorkbench
            {
                Drawing = order =>
                {
                    orders.Add(order);
                    drawing?.Invoke(order);
                },
            },
        };
        var code = CommandLine.Run(["picture", brief, .. wishes], desk, stop ?? TestContext.Current.CancellationToken);
        return (code, Encoding.UTF8.GetString(output.ToArray()), error.ToString());
    }
}
