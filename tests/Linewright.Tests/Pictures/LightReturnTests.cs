using Linewright.Pictures.Rays;
using Linewright.Pictures.Spectra;
using Linewright.Pictures.Transport;

namespace Linewright.Tests.Pictures;

/// <summary>How much light a round brilliant returns through its crown, by its angles.</summary>
/// <remarks>
/// Source: Hemphill, Reinitz, Johnson and Shigley (1998), Gems and Gemology, fall: no crown at all returns most; of crowns
/// of 10 degrees or more, 23 returns most; pavilions of 38 to 42 return much. Summaries were read, not the article, so
/// only the shape is held: an even upper hemisphere lights the stone, views are weighted by the square of their cosine, light
/// thrown back by the outside is left out.
/// </remarks>
public class LightReturnTests
{
    [Fact]
    public void The_best_crown_of_ten_degrees_or_more_is_near_23_and_none_is_better_still()
    {
        double[] crowns = [10, 15, 20, 23, 26, 30, 34, 40];
        var light = crowns.ToDictionary(c => c, c => Return(56, c, 40.5));
        Assert.InRange(light.MaxBy(pair => pair.Value).Key, 20, 26);
        Assert.True(Return(56, 0.5, 40.5) > light.Values.Max(), "a stone without crown returns most");
        Assert.True(light[40] < light[34] && light[34] < light[23]);
    }

    [Fact]
    public void The_best_pavilion_is_near_41()
    {
        double[] pavilions = [37, 39, 40, 41, 42, 43, 45];
        Assert.InRange(pavilions.MaxBy(p => Return(56, 34, p)), 40, 42);
    }

    /// <summary>Mean returned share over views of the crown, weighted by the square of their cosine. Follows all light, splitting at every border.</summary>
    private static unsafe double Return(double table, double crown, double pavilion)
    {
        const int count = 20_000;
        var body = new FacetBody(Brilliant.Of(table, crown, pavilion));
        var index = StoneTable.Find("diamond").Index;
        double sum = 0, weights = 0;
        fixed (float* numbers = body.Numbers)
        {
            var planes = body.At(numbers);
            for (var i = 1; i <= count; i++)
            {
                // An even lattice in five dimensions. Source: Roberts (2018), the R-sequence.
                double a = Part(i, 0.8566748838545029), b = Part(i, 0.733891856627126), c = Part(i, 0.6287067210378087), d = Part(i, 0.5385972572236101), e = Part(i, 0.46139582264141);
                var n = (float)index.At(450 + 200 * a);
                double cosine = Math.Sqrt(b), sine = Math.Sqrt(1 - b), turn = 2 * Math.PI * c, radius = Math.Sqrt(d), place = 2 * Math.PI * e;
                var way = new Float3((float)(-sine * Math.Cos(turn)), (float)(-sine * Math.Sin(turn)), (float)-cosine);
                var start = new Float3((float)(radius * Math.Cos(place)), (float)(radius * Math.Sin(place)), (float)(0.03 - body.Middle.Z)) - way * 4;
                var entry = FacetTracing.Enter(planes, start, way);
                if (entry.Facet >= 0 && planes.Normal(entry.Facet).Z > 1e-4f)
                {
                    weights += cosine;
                    sum += cosine * Follow(planes, start + way * entry.Distance, way, entry.Facet, n);
                }
            }
        }

        return sum / weights;
    }

    private static double Part(int i, double step) => (0.5 + i * step) % 1;

    private static double Follow(in FacetPlanes planes, Float3 o, Float3 d, int facet, float index)
    {
        var n = planes.Normal(facet);
        var cosine = -Float3.Dot(d, n);
        double left = 1 - Fresnel.Dielectric(cosine, 1 / index, out var beyond), returned = 0;
        d = d * (1 / index) + n * (cosine / index - beyond);
        for (var turn = 0; turn < 256 && left > 1e-3; turn++)
        {
            var exit = FacetTracing.Leave(planes, o, d);
            o += d * MathF.Max(0, exit.Distance);
            n = planes.Normal(exit.Facet);
            cosine = Float3.Dot(d, n);
            var back = Fresnel.Dielectric(cosine, index, out beyond);
            if (back < 1)
            {
                var outwards = d * index + n * (beyond - index * cosine);
                returned += outwards.Z > 0 ? left * (1 - back) : 0;
                left *= back;
            }

            d -= n * (2 * cosine);
        }

        return returned;
    }
}
