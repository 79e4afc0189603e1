using System.CommandLine;
using System.Globalization;
using System.Runtime.CompilerServices;
using Linewright.Brief;
using Linewright.Delivery;
using Linewright.Pictures.Gpu;
using Linewright.Pictures.Images;
using Linewright.Pictures.Transport;
using Linewright.Staging;

namespace Linewright.Cli;

/// <summary>picture: draws the piece before it is made, in poses that its metal can take.</summary>
internal static class PictureVerb
{
    private const int MostFrames = 3600;

    // What a client expects where nothing is asked for: the line as it lies closed, and how its clasp opens.
    private static readonly SceneKind[] Usual = [SceneKind.Closed, SceneKind.Clasp];

    private static readonly Option<string?> Scene = Choice("--scene", "What it shows; left out, two pictures are written: closed and clasp.", [.. PictureWords.All<SceneKind>()]);
    private static readonly Option<string?> Quality = Choice("--quality", "When it is done; good where left out.", [.. PictureWords.All<RenderQuality>()]);
    private static readonly Option<string?> Ground = Choice("--ground", "What it lies on; paper where left out.", [.. PictureWords.All<StageGround>()]);
    private static readonly Option<string?> Denoise = Choice("--denoise", "Whether the noise that is left is filtered out; on where left out.", ["on", "off"]);
    private static readonly Option<string?> Bits = Choice("--bits", "Bits a channel of a PNG; 8 where left out.", ["8", "16"]);

    private static readonly Option<string?> On = Choice("--on", "What draws it: the processor, or a CUDA graphics card; cpu where left out.", ["cpu", "gpu"]);

    private static readonly Option<string?> Size = new("--size") { Description = "Pixels across and down; 1920x1080 where left out.", HelpName = "WIDTHxHEIGHT" };
    private static readonly Option<string?> Out = new("--out") { Description = "The file to write, .png or .pfm (linear light); named after the brief and the scene where left out.", HelpName = "FILE" };
    private static readonly Option<bool> Transparent = new("--transparent") { Description = "Leaves the ground out but for the shadow on it." };
    private static readonly Option<int?> Frames = new("--frames") { Description = "A turntable: so many numbered pictures of a whole turn.", HelpName = "N" };
    private static readonly Option<uint?> Seed = new("--seed") { Description = "Same seed, same picture; 1 where left out.", HelpName = "N" };
    private static readonly Option<int?> Focus = new("--focus") { Description = "The stone that is sharp, counted from 1 at the tongue; by rule where left out.", HelpName = "N" };

    public static Command Create(Desk desk)
    {
        var arguments = new BriefArguments();
        var verb = new Command("picture", "Draws the piece: light traced through its stones and off its metal.")
        {
            arguments.Brief, Scene, Size, Quality, Out, Bits, Ground, Transparent, Frames, Denoise, Seed, Focus, On, arguments.Set,
        };
        verb.SetAction(async (parse, stop) =>
        {
            var orders = Orders(parse);
            var brief = arguments.Read(parse, desk);
            CheckFocus(parse.GetValue(Focus), desk.Workbench.Plan(brief, new Quiet(), stop).Layout.Count);
            var names = Names(parse, arguments, brief, orders);
            var engine = parse.GetValue(On) == "gpu" ? Card() : PictureEngine.Processor;
            using var held = engine as IDisposable;
            await Task.Run(() => DrawAll(desk, brief, [.. orders.Select(order => order with { Engine = engine })], names, BitsOf(parse), stop), stop).ConfigureAwait(false);
            return ExitCode.Done;
        });
        return verb;
    }

    private static void DrawAll(Desk desk, ResolvedBrief brief, List<PictureOrder> orders, List<string> names, int bits, CancellationToken stop)
    {
        using var answer = new StreamWriter(desk.Out, leaveOpen: true);
        using var session = desk.Workbench.Photograph(brief);
        for (var i = 0; i < orders.Count; i++)
        {
            using var file = new PictureOutput(names[i]);
            using var onStop = stop.Register(file.Discard);
            PictureSummary summary;
            using (var stage = new StageLine(desk.Error, desk.ShowsProgress))
            {
                var shown = new PictureStage(stage, orders.Count == 1 ? names[i] : FormattableString.Invariant($"{names[i]} ({i + 1} of {orders.Count})"));
                var picture = session.Take(orders[i], shown, stop);
                summary = shown.Summary(picture);
                file.Publish(stream => PictureFile.Write(stream, names[i], picture, bits), stop);
            }

            answer.WriteLine($"{names[i]}  {summary.Words(orders[i])}");
            answer.Flush();
        }
    }

    // Kept apart, so that the card's library is loaded only where a card is asked for.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static GpuEngine Card()
        => GpuEngine.Find(out var missing) ?? throw Asked($"--on gpu: {missing}, expected an NVIDIA card with its driver; --on cpu draws the same picture");

    private static List<PictureOrder> Orders(ParseResult parse)
    {
        var size = SizeOf(parse.GetValue(Size));
        var scenes = parse.GetValue(Scene) is { } scene ? [PictureWords.Read<SceneKind>(scene)!.Value] : Usual;
        if (scenes.Length > 1 && parse.GetValue(Out) is not null)
        {
            throw Asked("--out: read one file for two pictures, expected --scene with it; leave --out away for names of their own");
        }

        if (parse.GetValue(Out) is { } path && !PictureFile.IsKnown(path))
        {
            throw Asked($"--out: read '{path}', expected a name that ends in .png or .pfm");
        }

        var frames = parse.GetValue(Frames);
        if (frames is < 1 or > MostFrames)
        {
            throw Asked(FormattableString.Invariant($"--frames: read {frames}, expected 1 to {MostFrames}"));
        }

        if (frames is not null && scenes.Length > 1)
        {
            throw Asked("--frames: read no --scene, expected the one that turns, such as --scene closed");
        }

        return [.. scenes.Select(kind => new PictureOrder(
            new StageOptions(kind, size)
            {
                Ground = parse.GetValue(Ground) is { } ground ? PictureWords.Read<StageGround>(ground)!.Value : StageGround.Paper,
                IsTransparent = parse.GetValue(Transparent),
                FocusStone = parse.GetValue(Focus),
            },
            parse.GetValue(Quality) is { } quality ? PictureWords.Read<RenderQuality>(quality)!.Value : RenderQuality.Good)
        {
            Seed = parse.GetValue(Seed) ?? 1,
            Denoise = parse.GetValue(Denoise) != "off",
        }).SelectMany(order => frames is { } count ? order.Frames(count) : [order])];
    }

    private static PictureSize SizeOf(string? asked) => asked is null
        ? PictureOrder.UsualSize
        : PictureWords.ReadSize(asked) ?? throw Asked(FormattableString.Invariant(
            $"--size: read '{asked}', expected WIDTHxHEIGHT in pixels, each {PictureWords.LeastSide} to {PictureWords.LargestSide}, such as 1920x1080"));

    private static int BitsOf(ParseResult parse) => parse.GetValue(Bits) == "16" ? 16 : 8;

    private static void CheckFocus(int? stone, int count)
    {
        if (stone < 1 || stone > count)
        {
            throw Asked(FormattableString.Invariant($"--focus: read {stone}, expected a stone of this line, 1 to {count}"));
        }
    }

    /// <summary>A name for each picture: the one asked for, or the brief's and the scene's; frames are numbered.</summary>
    private static List<string> Names(ParseResult parse, BriefArguments arguments, ResolvedBrief brief, List<PictureOrder> orders)
    {
        var file = parse.GetRequiredValue(arguments.Brief);
        var stem = file == "-" ? FileStem.Of(brief.Name) : Path.GetFileNameWithoutExtension(file);
        string Name(PictureOrder order) => parse.GetValue(Out) ?? $"{stem}-{PictureWords.Of(order.Stage.Scene)}.png";
        if (parse.GetValue(Frames) is null)
        {
            return [.. orders.Select(Name)];
        }

        var digits = Math.Max(4, orders.Count.ToString(CultureInfo.InvariantCulture).Length);
        return [.. orders.Select((order, index) =>
        {
            var name = Name(order);
            var number = (index + 1).ToString(CultureInfo.InvariantCulture).PadLeft(digits, '0');
            return $"{name[..^Path.GetExtension(name).Length]}-{number}{Path.GetExtension(name)}";
        })];
    }

    // "Harbour lights" becomes harbour-lights.
    private static Option<string?> Choice(string name, string description, string[] values)
    {
        var option = new Option<string?>(name) { Description = description };
        option.AcceptOnlyFromAmong(values);
        return option;
    }

    private static RefusalException Asked(string message) => new(ExitCode.Asked, message);

    private sealed class Quiet : IProgress<string>
    {
        public void Report(string value)
        {
            // The layout takes milliseconds.
        }
    }
}
