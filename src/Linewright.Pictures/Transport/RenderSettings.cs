using Linewright.Solids.Space;

namespace Linewright.Pictures.Transport;

/// <summary>How much work a picture may take.</summary>
public sealed record RenderSettings
{
    /// <summary>Presets of the three qualities. Chosen by eye on line bracelets after the filter: at 0.10 no grain is left in focus.</summary>
    public static RenderSettings Of(RenderQuality quality) => quality switch
    {
        RenderQuality.Draft => new RenderSettings { NoiseTarget = 0, MaxSamples = 16, Clamp = 20 },
        RenderQuality.Good => new RenderSettings { NoiseTarget = 0.10, MaxSamples = 192, Clamp = 40 },
        _ => new RenderSettings { NoiseTarget = 0.06, MaxSamples = 1024, Clamp = 0 },
    };

    /// <summary>Relative root mean square error at which a tile is done; 0: every pixel gets <see cref="MaxSamples"/>.</summary>
    public double NoiseTarget { get; init; }

    /// <summary>Samples that a pixel may take, 1 to 65,536.</summary>
    public int MaxSamples { get; init; } = 64;

    /// <summary>
    /// Largest luminance of one sample whose path met ground or metal first and a stone after that, as a multiple of white;
    /// 0: none is cut. Cutting takes energy away: caustics come out darker than they are. With it goes a search for
    /// single pixels that one sample has set alight. Light that the eye sees straight through stones is never cut, so
    /// fire stays. Final pictures are not cut.
    /// </summary>
    public double Clamp { get; init; }

    /// <summary>Same seed, same picture.</summary>
    public uint Seed { get; init; } = 1;

    /// <summary>Whether the filter runs at the end.</summary>
    public bool Denoise { get; init; } = true;

    /// <summary>Whether the picture keeps its guides (albedo, normal, depth, facet, variance): 36 bytes a pixel.</summary>
    public bool KeepGuides { get; init; }

    /// <summary>Threads, 0 for one a core; has no influence on the picture.</summary>
    public int Threads { get; init; }

    /// <summary>Whether the first samples are taken and told of one, two and four at a time, so that something is to be seen early; has no influence on the picture.</summary>
    public bool ShowsEarly { get; init; }

    /// <summary>What the samples are taken on.</summary>
    public PictureEngine Engine { get; init; } = PictureEngine.Processor;

    /// <summary>0 both ways of finding light, 1 aiming alone, 2 chance alone: for tests.</summary>
    internal int Ways { get; init; }

    /// <summary>How loops over a picture are run: on the threads of whoever asks for it, so that one drawn behind other work stays behind it.</summary>
    internal ParallelOptions Work(CancellationToken stop = default)
        => new() { MaxDegreeOfParallelism = Threads > 0 ? Threads : -1, TaskScheduler = TaskScheduler.Current, CancellationToken = stop };

    internal void Check()
    {
        Guard.InRange(NoiseTarget, 0, 10);
        Guard.InRange(MaxSamples, 1, 65536);
        Guard.InRange(Clamp, 0, 1e9);
        Guard.InRange(Threads, 0, 1024);
    }
}
