using System.Runtime.Intrinsics;

namespace Linewright.Pictures.Rays;

/// <summary>A run of items, the box around them and the box around twice their middles.</summary>
internal struct BoxRange
{
    public int First;
    public int Count;
    public Vector128<float> Low;
    public Vector128<float> High;
    public Vector128<float> MiddleLow;
    public Vector128<float> MiddleHigh;

    public static BoxRange Nothing(int first) => new()
    {
        First = first,
        Low = Vector128.Create(float.MaxValue),
        High = Vector128.Create(float.MinValue),
        MiddleLow = Vector128.Create(float.MaxValue),
        MiddleHigh = Vector128.Create(float.MinValue),
    };

    /// <summary>Half the surface of the box.</summary>
    public readonly float Surface
    {
        get
        {
            var size = High - Low;
            float x = size.GetElement(0), y = size.GetElement(1), z = size.GetElement(2);
            return x * y + y * z + z * x;
        }
    }

    public void Take(in BoxItem item)
    {
        Count++;
        Low = Vector128.MinNative(Low, item.Low);
        High = Vector128.MaxNative(High, item.High);
        var middle = item.Middle;
        MiddleLow = Vector128.MinNative(MiddleLow, middle);
        MiddleHigh = Vector128.MaxNative(MiddleHigh, middle);
    }

    public void Join(in BoxRange other)
    {
        Count += other.Count;
        Low = Vector128.MinNative(Low, other.Low);
        High = Vector128.MaxNative(High, other.High);
        MiddleLow = Vector128.MinNative(MiddleLow, other.MiddleLow);
        MiddleHigh = Vector128.MaxNative(MiddleHigh, other.MiddleHigh);
    }
}
