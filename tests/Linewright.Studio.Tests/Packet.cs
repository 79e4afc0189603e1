using System.Runtime.InteropServices;
using System.Text;
using System.Text.Json;

namespace Linewright.Studio.Tests;

/// <summary>Reads a mesh packet as a client would, from its description alone.</summary>
internal sealed class Packet
{
    private readonly byte[] bytes;
    private readonly int start;

    public Packet(byte[] bytes)
    {
        this.bytes = bytes;
        Assert.Equal("LWM1", Encoding.ASCII.GetString(bytes, 0, 4));
        var length = BitConverter.ToInt32(bytes, 4);
        Header = JsonDocument.Parse(bytes.AsMemory(8, length)).RootElement;
        start = 8 + length;
        Assert.Equal(0, start % 4);
    }

    public JsonElement Header { get; }

    public float[] Floats(JsonElement place) => MemoryMarshal.Cast<byte, float>(Part(place)).ToArray();

    public int[] Indices(JsonElement place) => MemoryMarshal.Cast<byte, int>(Part(place)).ToArray();

    private Span<byte> Part(JsonElement place) => bytes.AsSpan(start + 4 * place[0].GetInt32(), 4 * place[1].GetInt32());
}
