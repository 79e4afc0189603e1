using System.Collections.Immutable;
using Linewright.Pictures.Images;
using Linewright.Pictures.Rays;
using Linewright.Pictures.Scenes;
using Linewright.Pictures.Spectra;
using Linewright.Solids.Space;

namespace Linewright.Pictures.Transport;

/// <summary>A scene as flat tables: trees, records, curves. Owns their memory.</summary>
internal sealed unsafe class CompiledScene : IDisposable
{
    private readonly List<IDisposable> owned = [];
    private readonly List<float> curves = [];
    private readonly List<float> albedos = [];
    private readonly Dictionary<(double Along, double Across), int> finishes = [];
    private readonly Dictionary<object, int> known = new(ReferenceEqualityComparer.Instance);

    public CompiledScene(Scene scene, PictureSize size, RenderSettings settings)
    {
        var forest = new ThingForest(
            scene.Shapes,
            [.. scene.Metals.Select(m => (m.Shape, m.Place))],
            scene.Bodies,
            [.. scene.Stones.Select(s => (s.Body, s.Place))],
            settings.Threads);
        owned.Add(forest);
        var firstFacet = 0;
        var stones = new StoneRecord[scene.Stones.Length];
        for (var i = 0; i < stones.Length; i++)
        {
            stones[i] = Stone(scene.Stones[i].Material) with { FirstFacet = firstFacet };
            firstFacet += scene.Bodies[scene.Stones[i].Body].Faces.Length;
        }

        World = new ProcessorWorld
        {
            Things = forest.Tree,
            Metals = Keep<MetalRecord>([.. scene.Metals.Select(m => Metal(m.Finish))]),
            Stones = Keep<StoneRecord>(stones),
            Strips = Keep<StripRecord>([.. scene.Surroundings.Strips.Select(Strip)]),
            Waves = Keep<WaveBin>(WaveTable.Bins),
            Sobol = Keep<uint>(SobolNumbers.All()),
        };
        var sky = new SkyRecord
        {
            Zenith = (float)scene.Surroundings.Zenith,
            Horizon = (float)scene.Surroundings.Horizon,
            Nadir = (float)scene.Surroundings.Nadir,
            Column = LightColumn(scene.Surroundings.Colour, 1),
            StripCount = scene.Surroundings.Strips.Length,
            Seen = scene.Surroundings.Seen ? 1 : 0,
        };
        var world = World;
        var (cells, mean) = SkyMap.Of(ref world, sky);
        var chances = Chances(scene, mean);
        sky.Chance = (float)chances[^1];
        world.Cells = Keep<SkyCell>(cells);
        world.LampRows = Keep<LampRecord>([.. scene.Lights.Select((light, i) => Lamp(light, chances[i]))]);
        Record = new SceneRecord
        {
            Camera = Camera(scene.Lens, size),
            Ground = Floor(scene.Ground),
            Sky = sky,
            MetalCount = scene.Metals.Length,
            LampCount = scene.Lights.Length,
            Clamp = (float)settings.Clamp,
            Seed = settings.Seed,
            Ways = settings.Ways,
        };
        world.Albedos = Keep<float>([.. albedos]);
        world.CurveRows = Keep<float>([.. curves]);
        World = world;
    }

    /// <summary>Valid as long as this object is.</summary>
    public ProcessorWorld World { get; }

    public SceneRecord Record { get; }

    /// <summary>Gives the memory back.</summary>
    public void Dispose() => owned.ForEach(thing => thing.Dispose());

    private T* Keep<T>(ReadOnlySpan<T> values)
        where T : unmanaged
    {
        var block = new AlignedBlock<T>(values);
        owned.Add(block);
        return block.Pointer;
    }

    private int Column(object key, Func<float[]> values)
    {
        if (!known.TryGetValue(key, out var column))
        {
            column = curves.Count;
            curves.AddRange(values());
            known[key] = column;
        }

        return column;
    }

    private int Albedo((double Along, double Across) finish, Func<float[]> values)
    {
        if (!finishes.TryGetValue(finish, out var table))
        {
            table = albedos.Count;
            albedos.AddRange(values());
            finishes[finish] = table;
        }

        return table;
    }

    private int LightColumn(Spectrum colour, double radiance)
    {
        var column = curves.Count;
        curves.AddRange(WaveTable.Light(colour).Select(v => (float)(v * radiance)));
        return column;
    }

    private MetalRecord Metal(ConductorFinish finish)
    {
        var (red, green, blue) = finish.Metal.NormalColour();
        return new MetalRecord
        {
            Along = (float)finish.RoughAlong,
            Across = (float)finish.RoughAcross,
            Albedo = Albedo((finish.RoughAlong, finish.RoughAcross), () => AlbedoTable.Mirrors((float)finish.RoughAlong, (float)finish.RoughAcross)),
            Lines = new Float3(finish.Lines.Normalised()),
            Waviness = (float)finish.Waviness,
            ColumnN = Column(finish.Metal.N, () => WaveTable.Column(finish.Metal.N.At)),
            ColumnK = Column(finish.Metal.K, () => WaveTable.Column(finish.Metal.K.At)),
            ColumnNormal = Column(finish.Metal, () => WaveTable.Column(finish.Metal.NormalReflectance)),
            Colour = new Float3((float)red, (float)green, (float)blue),
        };
    }

    private StoneRecord Stone(StoneMaterial material) => new()
    {
        ColumnIndex = Column(material.Index, () => WaveTable.Column(material.Index.At)),
        ColumnAbsorption = IsClear(material.AbsorptionPerMm) ? -1 : Column(material.AbsorptionPerMm, () => WaveTable.Column(material.AbsorptionPerMm.At)),
        Disperses = material.Index.IsConstant ? 0 : 1,
    };

    private static bool IsClear(Spectrum absorption) => WaveTable.Bins.All(bin => absorption.At(bin.Nm) <= 0);

    private static StripRecord Strip(LightStrip strip)
    {
        var towards = strip.Towards.Normalised();
        var across = towards.Cross(strip.Along).Normalised();
        return new StripRecord
        {
            Towards = new Float3(towards),
            Across = new Float3(across),
            Along = new Float3(across.Cross(towards)),
            HalfLength = (float)Math.Tan(strip.HalfLength),
            HalfWidth = (float)Math.Tan(strip.HalfWidth),
            Fade = (float)(Math.Tan(strip.HalfWidth) * strip.Softness),
            Radiance = (float)strip.Radiance,
        };
    }

    private LampRecord Lamp(AreaLight light, double chance)
    {
        Vec3 u = light.HalfEdgeU * 2, v = light.HalfEdgeV * 2;
        return new LampRecord
        {
            Corner = new Float3(light.Centre - light.HalfEdgeU - light.HalfEdgeV),
            EdgeU = new Float3(u),
            EdgeV = new Float3(v),
            OverU = (float)(1 / u.Dot(u)),
            OverV = (float)(1 / v.Dot(v)),
            Normal = new Float3(light.Normal),
            Area = (float)light.Area,
            Column = LightColumn(light.Colour, light.Radiance),
            Chance = (float)chance,
        };
    }

    /// <summary>How often each light is aimed at: by the irradiance that it would give at what the lens looks at; the surroundings last.</summary>
    private static ImmutableArray<double> Chances(Scene scene, double meanSky)
    {
        var weights = scene.Lights.Select(light =>
        {
            var to = light.Centre - scene.Lens.Target;
            return light.Radiance * light.Area / Math.Max(to.Dot(to), light.Area) + 1e-6;
        }).Append(meanSky * Math.PI + 1e-6).ToList();
        var sum = weights.Sum();
        return [.. weights.Select(w => w / sum)];
    }

    private static CameraRecord Camera(Lens lens, PictureSize size)
    {
        var forward = (lens.Target - lens.Eye).Normalised();
        var right = forward.Cross(lens.Up).Normalised();
        return new CameraRecord
        {
            Width = size.Width,
            Height = size.Height,
            Eye = new Float3(lens.Eye),
            Forward = new Float3(forward),
            Right = new Float3(right),
            Up = new Float3(right.Cross(forward)),
            HalfHeight = (float)Math.Tan(lens.Field / 2),
            Aperture = (float)lens.ApertureRadius,
            Focus = (float)lens.FocalDistance,
        };
    }

    private GroundRecord Floor(Ground? ground)
    {
        if (ground is null)
        {
            return new GroundRecord { Kind = -1 };
        }

        // Assumed: honed stone is the only ground with a gloss.
        var rough = ground.Kind == GroundKind.Stone ? 0.22f : 0;
        var reflectance = Reflectance.OfColour(ground.Red, ground.Green, ground.Blue);
        return new GroundRecord
        {
            Kind = ground.Kind switch
            {
                GroundKind.Paper => GroundPattern.Paper,
                GroundKind.Stone => GroundPattern.Stone,
                GroundKind.Cloth => GroundPattern.Cloth,
                GroundKind.Clay => GroundPattern.Clay,
                _ => GroundPattern.Plain,
            },
            Height = (float)ground.Height,
            Grain = (float)ground.Grain,
            Transparent = ground.Transparent ? 1 : 0,
            Column = Column(reflectance, () => WaveTable.Column(reflectance.At)),
            CoatRough = rough,
            CoatMean = rough > 0 ? CoatMean(rough) : 0,
            CoatAlbedo = rough > 0 ? Albedo((-1, rough), () => AlbedoTable.Coat(rough)) : 0,
            Colour = new Float3((float)ground.Red, (float)ground.Green, (float)ground.Blue),
        };
    }

    /// <summary>Mean of the coat's albedo over a hemisphere, weighted by the cosine.</summary>
    private static float CoatMean(float rough)
    {
        var table = AlbedoTable.Coat(rough);
        const int steps = 256;
        var sum = 0f;
        for (var i = 0; i < steps; i++)
        {
            var place = MathF.Sqrt(MathF.Sqrt((i + 0.5f) / steps)) * (AlbedoTable.Angles - 1);
            var at = Math.Min((int)place, AlbedoTable.Angles - 2);
            sum += table[at] + (table[at + 1] - table[at]) * (place - at);
        }

        return sum / steps;
    }
}
