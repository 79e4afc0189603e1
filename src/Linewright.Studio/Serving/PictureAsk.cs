using System.Globalization;
using Linewright.Pictures.Images;
using Linewright.Pictures.Transport;
using Linewright.Staging;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;

namespace Linewright.Studio.Serving;

/// <summary>What a picture is ordered with: the options of the command picture, in the address, with the same defaults.</summary>
/// <param name="Scene">draped, closed, clasp, link, flat; closed where left out.</param>
/// <param name="Size">WIDTHxHEIGHT in pixels, at most 9,000,000 in all; 1920x1080 where left out.</param>
/// <param name="Quality">draft, good, final; good where left out.</param>
/// <param name="Ground">paper, stone, cloth, clay, none; paper where left out.</param>
/// <param name="Transparent">Whether the ground is left out but for the shadow on it: true, false; false where left out.</param>
/// <param name="Focus">The stone that is sharp, counted from 1 at the tongue; by rule where left out.</param>
/// <param name="Denoise">Whether the noise that is left is filtered out at the end: on, off; on where left out.</param>
/// <param name="Seed">Same seed, same picture; 1 where left out.</param>
internal sealed record PictureAsk(
    [FromQuery(Name = "scene")] string? Scene = null,
    [FromQuery(Name = "size")] string? Size = null,
    [FromQuery(Name = "quality")] string? Quality = null,
    [FromQuery(Name = "ground")] string? Ground = null,
    [FromQuery(Name = "transparent")] string? Transparent = null,
    [FromQuery(Name = "focus")] string? Focus = null,
    [FromQuery(Name = "denoise")] string? Denoise = null,
    [FromQuery(Name = "seed")] string? Seed = null)
{
    /// <summary>Pixels of the largest picture taken here: 85 bytes of each are held while it is drawn. The command line draws larger ones.</summary>
    public const int MostPixels = 9_000_000;

    /// <summary>The order, for a line of so many stones.</summary>
    /// <exception cref="BadHttpRequestException">An option says something that it cannot.</exception>
    public PictureOrder Read(int stones) => new(
        new StageOptions(Choice("scene", Scene, SceneKind.Closed), SizeRead())
        {
            Ground = Choice("ground", Ground, StageGround.Paper),
            IsTransparent = Switch("transparent", Transparent, "true", "false", false),
            FocusStone = Focus is null or "" ? null : (int)Number("focus", Focus, 1, (uint)stones),
        },
        Choice("quality", Quality, RenderQuality.Good))
    {
        Denoise = Switch("denoise", Denoise, "on", "off", true),
        Seed = Seed is null ? 1 : Number("seed", Seed, 0, uint.MaxValue),
        ShowsEarly = true,
    };

    /// <summary>What a switch says.</summary>
    /// <exception cref="BadHttpRequestException">Neither.</exception>
    public static bool Switch(string option, string? word, string on, string off, bool usual)
        => word is null ? usual : word == on || (word == off ? false : throw Unknown(option, word, $"{on} or {off}"));

    private PictureSize SizeRead()
    {
        var size = Size is null ? PictureOrder.UsualSize : PictureWords.ReadSize(Size);
        return size is { } read && read.Count <= MostPixels
            ? read
            : throw Unknown("size", Size!, FormattableString.Invariant($"WIDTHxHEIGHT in pixels, each from {PictureWords.LeastSide}, at most {MostPixels:#,0} in all, such as 1920x1080"));
    }

    private static T Choice<T>(string option, string? word, T usual)
        where T : struct, Enum
        => word is null ? usual : PictureWords.Read<T>(word) ?? throw Unknown(option, word, string.Join(", ", PictureWords.All<T>()));

    private static uint Number(string option, string word, uint low, uint high)
        => uint.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= low && number <= high
            ? number
            : throw Unknown(option, word, FormattableString.Invariant($"a whole number from {low} to {high}"));

    private static BadHttpRequestException Unknown(string option, string read, string expected) => new($"{option}: read {read}, expected {expected}");
}
