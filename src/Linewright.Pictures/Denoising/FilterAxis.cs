using System.Runtime.Intrinsics;

namespace Linewright.Pictures.Denoising;

/// <summary>One or two axes of colour that are judged and averaged together.</summary>
internal sealed class FilterAxis
{
    private readonly int first;
    private readonly int count;
    private readonly int stride;
    private readonly float[][] sumsFirst;
    private readonly float[][] sumsSecond;
    private readonly float[] weightFirst;
    private readonly float[] weightSecond;

    public FilterAxis(FilterBand band, int first, int count)
    {
        this.first = first;
        this.count = count;
        stride = band.Stride;
        float[] Plane() => new float[band.Stride * band.Rows];
        PatchFirst = Plane();
        PatchSecond = Plane();
        weightFirst = Plane();
        weightSecond = Plane();
        sumsFirst = [.. Enumerable.Range(0, count).Select(_ => Plane())];
        sumsSecond = [.. Enumerable.Range(0, count).Select(_ => Plane())];
    }

    /// <summary>How unlike every pixel and the one at the offset are, on the first half.</summary>
    public float[] PatchFirst { get; }

    /// <summary>The same on the other half.</summary>
    public float[] PatchSecond { get; }

    public void Clear()
    {
        foreach (var plane in (float[][])[weightFirst, weightSecond, .. sumsFirst, .. sumsSecond])
        {
            Array.Clear(plane);
        }
    }

    /// <summary>Squared difference of every pixel and the one at an offset, less what noise explains, in variances.</summary>
    public void Compare(FilterBand band, int offset, float strictness, int rows)
    {
        for (var row = FilterBand.Margin - 1; row <= FilterBand.Margin + rows; row++)
        {
            var end = (row + 1) * stride - FilterBand.Margin - 7;
            for (var at = row * stride + FilterBand.Margin - 1; at < end; at += 8)
            {
                Vector256<float> one = Vector256<float>.Zero, other = one;
                for (var axis = first; axis < first + count; axis++)
                {
                    Vector256<float> v = Load(band.Variance[axis], at), u = Load(band.Variance[axis], at + offset);
                    var noise = v + Vector256.MinNative(v, u);

                    // Measured in the pixel's own noise: a spark next door is all noise, and must not buy itself in with that.
                    var over = Vector256.Create(1f / count) / (Vector256.Create(1e-6f) + noise * (strictness * strictness));
                    var a = Load(band.First[axis], at) - Load(band.First[axis], at + offset);
                    var b = Load(band.Second[axis], at) - Load(band.Second[axis], at + offset);
                    one += (a * a - noise) * over;
                    other += (b * b - noise) * over;
                }

                // Light, and light over a surface's own albedo, cannot be compared: such a pair speaks neither for the patch nor against it.
                var apart = Vector256.GreaterThan(Vector256.Abs(Load(band.Side, at) - Load(band.Side, at + offset)), Vector256.Create(1.5f));
                Vector256.AndNot(one, apart).CopyTo(PatchFirst, at);
                Vector256.AndNot(other, apart).CopyTo(PatchSecond, at);
            }
        }
    }

    /// <summary>Mean over three by three, of which the largest counts no more than so much.</summary>
    public Vector256<float> Patch(float[] plane, int at, Vector256<float> most)
    {
        var sum = Row(plane, at - stride) + Row(plane, at) + Row(plane, at + stride);
        if (Vector256.LessThanAny(most, Vector256.Create(float.MaxValue)))
        {
            var largest = Vector256.MaxNative(Vector256.MaxNative(Largest(plane, at - stride), Largest(plane, at)), Largest(plane, at + stride));
            sum -= Vector256.MaxNative(largest - most, Vector256<float>.Zero);
        }

        return sum * (1f / 9);
    }

    /// <summary>Adds the pixels at an offset; each half is weighed by how alike they are on the other.</summary>
    public void Add(FilterBand band, int at, int offset, Vector256<float> byFirst, Vector256<float> bySecond)
    {
        for (var k = 0; k < count; k++)
        {
            Add(sumsFirst[k], at, bySecond * Load(band.First[first + k], at + offset));
            Add(sumsSecond[k], at, byFirst * Load(band.Second[first + k], at + offset));
        }

        Add(weightFirst, at, bySecond);
        Add(weightSecond, at, byFirst);
    }

    /// <summary>Sum of the weights of both halves.</summary>
    public float Weight(int at) => weightFirst[at] + weightSecond[at];

    /// <summary>Mean of both halves' filtered light at a pixel.</summary>
    public float Read(int axis, int at) => 0.5f * (sumsFirst[axis][at] / weightFirst[at] + sumsSecond[axis][at] / weightSecond[at]);

    private static Vector256<float> Load(float[] plane, int at) => Vector256.Create(plane, at);

    /// <summary>Adds to eight numbers of a plane.</summary>
    public static void Add(float[] plane, int at, Vector256<float> value) => (Load(plane, at) + value).CopyTo(plane, at);

    private static Vector256<float> Largest(float[] plane, int at)
        => Vector256.MaxNative(Vector256.MaxNative(Load(plane, at - 1), Load(plane, at)), Load(plane, at + 1));

    private static Vector256<float> Row(float[] plane, int at) => Load(plane, at - 1) + Load(plane, at) + Load(plane, at + 1);
}
