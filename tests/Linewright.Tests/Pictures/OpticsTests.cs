using Linewright.Pictures.Rays;
using Linewright.Pictures.Spectra;
using Linewright.Pictures.Transport;

namespace Linewright.Tests.Pictures;

public class OpticsTests
{
    [Theory]
    [InlineData(1.5, 0, 0.04)] // ((n - 1) / (n + 1))^2. Source: Born and Wolf, Principles of Optics, section 1.5
    [InlineData(1.5, 56.3099, 0.07396)] // Brewster's angle, atan n: only the half polarised across is left, ((n2 - 1) / (n2 + 1))^2 / 2
    [InlineData(2.4173, 0, 0.17201)] // Diamond at line D. Calculated from Peter (1923)
    [InlineData(2.4173, 67.526, 0.25046)] // At its Brewster's angle, by the same closed form. Calculated
    public void A_clear_border_throws_back_what_Fresnel_says(double index, double angleDeg, double share)
        => Assert.Equal(share, Fresnel.Dielectric((float)Math.Cos(double.DegreesToRadians(angleDeg)), (float)(1 / index), out _), 5e-5);

    [Fact]
    public void Light_bends_by_Snell_and_stays_in_beyond_the_critical_angle()
    {
        // Source: critical angle of diamond 24.4 degrees, Webster, Gems; asin(1 / 2.41726) = 24.437.
        const float n = 2.41726f;
        Assert.True(Fresnel.Dielectric(Cosine(24.42), n, out _) < 1);
        Assert.Equal(1, Fresnel.Dielectric(Cosine(24.45), n, out _));
        Fresnel.Dielectric(Cosine(40), 1 / n, out var beyond);
        Assert.Equal(Math.Sin(double.DegreesToRadians(40)), n * Math.Sqrt(1 - beyond * beyond), 1e-5);

        // Light that goes out the way it came in loses the same share.
        var inside = Fresnel.Dielectric(beyond, n, out var outside);
        Assert.Equal(Fresnel.Dielectric(Cosine(40), 1 / n, out _), inside, 1e-5f);
        Assert.Equal(Cosine(40), outside, 1e-5f);
    }

    [Theory]
    [InlineData(1.5)]
    [InlineData(2.41726)]
    public void Over_a_hemisphere_it_throws_back_what_Walsh_derived(double n)
    {
        // Source: Walsh (1926), closed form of the cosine-weighted mean; 0.0918 for n = 1.5.
        double n2 = n * n, n4 = n2 * n2;
        var closed = 0.5 + (n - 1) * (3 * n + 1) / (6 * (n + 1) * (n + 1)) + n2 * (n2 - 1) * (n2 - 1) / Math.Pow(n2 + 1, 3) * Math.Log((n - 1) / (n + 1))
            - 2 * n * n2 * (n2 + 2 * n - 1) / ((n2 + 1) * (n4 - 1)) + 8 * n4 * (n4 + 1) / ((n2 + 1) * (n4 - 1) * (n4 - 1)) * Math.Log(n);
        double sum = 0;
        const int steps = 20000;
        for (var i = 0; i < steps; i++)
        {
            sum += Fresnel.Dielectric((float)Math.Sqrt((i + 0.5) / steps), (float)(1 / n), out _);
        }

        Assert.Equal(closed, sum / steps, 5e-5);
    }

    [Fact]
    public void A_metal_at_normal_incidence_agrees_with_its_index_and_at_grazing_throws_back_all()
    {
        var gold = MetalTable.Element("Au");
        foreach (var nm in new[] { 450.9, 548.6, 659.5 })
        {
            Assert.Equal(gold.NormalReflectance(nm), Fresnel.Conductor(1, (float)gold.N.At(nm), (float)gold.K.At(nm)), 1e-4);
            Assert.Equal(1, Fresnel.Conductor(1e-4f, (float)gold.N.At(nm), (float)gold.K.At(nm)), 1e-2f);
        }
    }

    [Theory]
    [InlineData(0.3, 0.3, 0.9)]
    [InlineData(0.1, 0.4, 0.6)]
    [InlineData(0.5, 0.2, 0.2)]
    public void Tiny_mirrors_are_chosen_as_often_as_their_density_says(double along, double across, double cosine)
    {
        // Chi-square over cells of the sphere of directions, cells expecting under 10 pooled; threshold four deviations above
        // the mean, one false alarm in 10^4. Source: Pearson (1900).
        const int rings = 16, sectors = 16, count = 100_000, fine = 12;
        var wo = new Float3((float)(Math.Sqrt(1 - cosine * cosine) * 0.8), (float)(Math.Sqrt(1 - cosine * cosine) * 0.6), (float)cosine);
        var seen = new double[rings * sectors];
        var random = new Random(5);
        for (var i = 0; i < count; i++)
        {
            var h = Microfacet.VisibleNormal(wo, (float)along, (float)across, random.NextSingle(), random.NextSingle());
            var wi = h * (2 * Float3.Dot(wo, h)) - wo;
            var ring = Math.Clamp((int)((wi.Z + 1) / 2 * rings), 0, rings - 1);
            seen[ring * sectors + Math.Clamp((int)((Math.Atan2(wi.Y, wi.X) / (2 * Math.PI) + 0.5) * sectors), 0, sectors - 1)]++;
        }

        double chi = 0, pooledSeen = 0, pooledExpected = 0, total = 0;
        var degrees = -1;
        for (var cell = 0; cell < seen.Length; cell++)
        {
            double expected = 0;
            for (var k = 0; k < fine * fine; k++)
            {
                var z = ((cell / sectors) + (k / fine + 0.5) / fine) / rings * 2 - 1;
                var phi = ((cell % sectors + (k % fine + 0.5) / fine) / sectors - 0.5) * 2 * Math.PI;
                var r = Math.Sqrt(1 - z * z);
                var wi = new Float3((float)(r * Math.Cos(phi)), (float)(r * Math.Sin(phi)), (float)z);
                var h = wo + wi;
                if (h.Z > 0)
                {
                    h = Float3.Normalise(h);
                    expected += Microfacet.ReflectedDensity(wo, h, (float)along, (float)across);
                }
            }

            expected *= count * 4 * Math.PI / (rings * sectors) / (fine * fine);
            total += expected;
            if (expected < 10)
            {
                (pooledSeen, pooledExpected) = (pooledSeen + seen[cell], pooledExpected + expected);
                continue;
            }

            degrees++;
            chi += (seen[cell] - expected) * (seen[cell] - expected) / expected;
        }

        Assert.Equal(1, total / count, 0.01);
        chi += (pooledSeen - pooledExpected) * (pooledSeen - pooledExpected) / Math.Max(10, pooledExpected);
        Assert.InRange(chi, 0, degrees + 4 * Math.Sqrt(2 * degrees));
    }

    [Fact]
    public void The_small_functions_are_as_good_as_they_say()
    {
        for (var i = 0; i < 1000; i++)
        {
            var turn = i / 1000f;
            Scalar.SinCosTurn(turn, out var sin, out var cos);
            Assert.Equal(Math.Sin(2 * Math.PI * turn), sin, 2e-6);
            Assert.Equal(Math.Cos(2 * Math.PI * turn), cos, 2e-6);
            var x = -i * 0.02f;
            Assert.InRange(Scalar.Exp(x) / Math.Exp(x), 1 - 3e-5, 1 + 3e-5);
        }
    }

    [Fact]
    public void Evenly_spread_numbers_fall_once_into_every_interval()
    {
        // Source: Sobol (1967): each coordinate of 2^k points meets each interval of length 2^-k once; the first two also meet
        // every box of that area once.
        var numbers = SobolNumbers.All();
        var points = Enumerable.Range(0, 256).Select(i => Enumerable.Range(0, SampleStream.Even).Select(d =>
        {
            var bits = 0u;
            for (var bit = 0; bit < 8; bit++)
            {
                bits ^= (i >> bit & 1) != 0 ? numbers[d * 32 + bit] : 0;
            }

            return SampleStream.Scramble(bits, (uint)(d * 7919 + 3));
        }).ToArray()).ToArray();
        for (var d = 0; d < SampleStream.Even; d++)
        {
            Assert.Equal(256, points.Select(p => p[d] >> 24).Distinct().Count());
        }

        for (var split = 0; split <= 8; split++)
        {
            var boxes = points.Select(p => ((ulong)p[0] >> (32 - split), (ulong)p[1] >> (24 + split)));
            Assert.Equal(256, boxes.Distinct().Count());
        }
    }

    private static float Cosine(double deg) => (float)Math.Cos(double.DegreesToRadians(deg));
}
