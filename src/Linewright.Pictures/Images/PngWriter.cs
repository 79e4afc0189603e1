using System.Buffers.Binary;
using System.IO.Compression;

namespace Linewright.Pictures.Images;

/// <summary>Writes PNG with 8 or 16 bits a channel, with alpha where the picture has any. Source: ISO/IEC 15948.</summary>
/// <remarks>
/// The same picture gives the same bytes on one version of the runtime. Marked as sRGB. Rows are developed, packed and handed on a few at
/// a time: beside the picture a writer holds a megabyte or two, however large the picture is.
/// </remarks>
public static class PngWriter
{
    // Rows developed at a time: enough to keep every processor busy, and under two megabytes for the widest usual picture.
    private const int Band = 32;

    // Bytes of one IDAT chunk at the most. Common practice: some tens of kilobytes; a reader must take any number of them.
    private const int ChunkBytes = 1 << 16;

    private static readonly uint[] CrcTable = MakeCrcTable();

    /// <summary>Develops and writes a picture.</summary>
    /// <param name="stream">Where to; left open.</param>
    /// <param name="picture">Linear light.</param>
    /// <param name="development">How it shall look.</param>
    /// <param name="bits">8 or 16.</param>
    /// <exception cref="ArgumentOutOfRangeException">Neither 8 nor 16 bits.</exception>
    public static void Write(Stream stream, Picture picture, Development development, int bits = 8)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(picture);
        ArgumentNullException.ThrowIfNull(development);
        if (bits is not (8 or 16))
        {
            throw new ArgumentOutOfRangeException(nameof(bits), bits, "a PNG has 8 or 16 bits a channel here");
        }

        var hasAlpha = picture.Alpha.Any(a => a < 0.9999f);
        var channels = hasAlpha ? 4 : 3;
        stream.Write([0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A]);
        Span<byte> head = stackalloc byte[13];
        BinaryPrimitives.WriteInt32BigEndian(head, picture.Size.Width);
        BinaryPrimitives.WriteInt32BigEndian(head[4..], picture.Size.Height);
        head[8] = (byte)bits;
        head[9] = (byte)(hasAlpha ? 6 : 2);
        Chunk(stream, "IHDR", head);

        // Perceptual intent.
        Chunk(stream, "sRGB", [0]);
        using (var chunks = new BufferedStream(new Chunks(stream), ChunkBytes))
        {
            Pack(chunks, picture, development, channels, bits / 8);
        }

        Chunk(stream, "IEND", []);
    }

    /// <summary>Rows, each as its difference from the row above, deflated.</summary>
    private static void Pack(Stream stream, Picture picture, Development development, int channels, int bytes)
    {
        var width = picture.Size.Width * channels * bytes;
        byte[] above = new byte[width], row = new byte[width], line = new byte[width + 1];
        var developed = new float[4 * picture.Size.Width * Math.Min(Band, picture.Size.Height)];
        using var zlib = new ZLibStream(stream, CompressionLevel.Optimal, leaveOpen: true);
        for (var y = 0; y < picture.Size.Height; y++)
        {
            if (y % Band == 0)
            {
                development.Develop(picture, y, Math.Min(Band, picture.Size.Height - y), developed);
            }

            for (var x = 0; x < picture.Size.Width; x++)
            {
                for (var c = 0; c < channels; c++)
                {
                    var value = developed[4 * (y % Band * picture.Size.Width + x) + c];
                    var at = (x * channels + c) * bytes;
                    if (bytes == 1)
                    {
                        row[at] = (byte)(value * 255 + 0.5f);
                    }
                    else
                    {
                        BinaryPrimitives.WriteUInt16BigEndian(row.AsSpan(at), (ushort)(value * 65535 + 0.5f));
                    }
                }
            }

            // Filter type 2: up.
            line[0] = 2;
            for (var i = 0; i < width; i++)
            {
                line[i + 1] = (byte)(row[i] - above[i]);
            }

            zlib.Write(line);
            (above, row) = (row, above);
        }
    }

    private static void Chunk(Stream stream, string type, ReadOnlySpan<byte> data)
    {
        Span<byte> number = stackalloc byte[4];
        Span<byte> name = [(byte)type[0], (byte)type[1], (byte)type[2], (byte)type[3]];
        BinaryPrimitives.WriteInt32BigEndian(number, data.Length);
        stream.Write(number);
        stream.Write(name);
        stream.Write(data);
        BinaryPrimitives.WriteUInt32BigEndian(number, Crc(Crc(0xFFFFFFFFu, name), data) ^ 0xFFFFFFFFu);
        stream.Write(number);
    }

    private static uint Crc(uint crc, ReadOnlySpan<byte> data)
    {
        foreach (var b in data)
        {
            crc = CrcTable[(crc ^ b) & 0xFF] ^ (crc >> 8);
        }

        return crc;
    }

    /// <summary>Whatever is written becomes a chunk of image data.</summary>
    private sealed class Chunks(Stream target) : Stream
    {
        public override bool CanRead => false;

        public override bool CanSeek => false;

        public override bool CanWrite => true;

        public override long Length => throw new NotSupportedException();

        public override long Position
        {
            get => throw new NotSupportedException();
            set => throw new NotSupportedException();
        }

        public override void Write(ReadOnlySpan<byte> buffer)
        {
            for (; buffer.Length > 0; buffer = buffer[Math.Min(ChunkBytes, buffer.Length)..])
            {
                Chunk(target, "IDAT", buffer[..Math.Min(ChunkBytes, buffer.Length)]);
            }
        }

        public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

        public override void Flush()
        {
            // Handed on as it comes.
        }

        public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();
    }

    private static uint[] MakeCrcTable()
    {
        // Source: ISO/IEC 15948, annex D: polynomial 0xEDB88320.
        var table = new uint[256];
        for (var n = 0u; n < 256; n++)
        {
            var c = n;
            for (var k = 0; k < 8; k++)
            {
                c = (c & 1) != 0 ? 0xEDB88320u ^ (c >> 1) : c >> 1;
            }

            table[n] = c;
        }

        return table;
    }
}
