using System.Buffers.Binary;
using System.Text;

namespace Linewright.Files;

/// <summary>A ZIP archive whose bytes depend on names and contents alone: stored, not packed, dated 1980-01-01.</summary>
/// <remarks>
/// <para>
/// Packed data are whatever one runtime's deflate makes of them, and the framework's archive names the operating system in
/// every entry. Here nothing is packed, the host is 0 (FAT, as if written on any system), and there are no attributes.
/// </para>
/// <para>
/// Standard: ZIP, APPNOTE.TXT 6.3, sections 4.3.7, 4.3.12 and 4.3.16. Names are ASCII, entries and archive under 2 GiB: no
/// ZIP64. The archive is written forwards only, so the stream need not seek.
/// </para>
/// </remarks>
internal sealed class StoredZip(Stream stream) : IDisposable
{
    private const uint LocalMark = 0x04034B50, CentralMark = 0x02014B50, EndMark = 0x06054B50;

    // 2.0, the least for a path with folders; in "version made by" the upper byte 0 is the host FAT.
    private const ushort Version = 20;

    // Month and day count from 1, years from 1980: the earliest date that the format can say.
    private const ushort FirstDay = (1 << 5) | 1;

    private static readonly uint[] CrcTable = [.. Enumerable.Range(0, 256).Select(CrcOf)];

    private readonly MemoryStream directory = new();
    private ushort count;
    private long offset;

    /// <summary>Adds an entry.</summary>
    /// <param name="name">Its path with /, ASCII.</param>
    /// <param name="content">Its bytes.</param>
    public void Add(string name, ReadOnlySpan<byte> content)
    {
        if (!Ascii.IsValid(name))
        {
            throw new ArgumentException($"'{name}' is not plain ASCII", nameof(name));
        }

        if (offset + content.Length > int.MaxValue)
        {
            throw new ArgumentException("an archive of 2 GiB or more would need another format", nameof(content));
        }

        var path = Encoding.ASCII.GetBytes(name);
        var crc = Crc(content);
        var length = (uint)content.Length;

        Write(directory, CentralMark);
        Write(directory, Version);
        Common(directory, path, crc, length);
        Write(directory, (ushort)0); // comment
        Write(directory, (ushort)0); // first disk
        Write(directory, (ushort)0); // internal attributes
        Write(directory, 0u); // external attributes
        Write(directory, (uint)offset);
        directory.Write(path);

        Write(stream, LocalMark);
        Common(stream, path, crc, length);
        stream.Write(path);
        stream.Write(content);
        offset += 30 + path.Length + content.Length;
        count++;
    }

    /// <summary>Writes the directory and leaves the stream open.</summary>
    public void Dispose()
    {
        directory.WriteTo(stream);
        Write(stream, EndMark);
        Write(stream, (ushort)0); // this disk
        Write(stream, (ushort)0); // disk of the directory
        Write(stream, count);
        Write(stream, count);
        Write(stream, (uint)directory.Length);
        Write(stream, (uint)offset);
        Write(stream, (ushort)0); // comment
        directory.Dispose();
    }

    // What a local header and an entry of the directory have in common, in the same order.
    private static void Common(Stream to, byte[] path, uint crc, uint length)
    {
        Write(to, Version);
        Write(to, (ushort)0); // flags
        Write(to, (ushort)0); // method: stored
        Write(to, (ushort)0); // time: midnight
        Write(to, FirstDay);
        Write(to, crc);
        Write(to, length);
        Write(to, length);
        Write(to, (ushort)path.Length);
        Write(to, (ushort)0); // extra
    }

    private static void Write(Stream to, ushort value)
    {
        Span<byte> bytes = stackalloc byte[2];
        BinaryPrimitives.WriteUInt16LittleEndian(bytes, value);
        to.Write(bytes);
    }

    private static void Write(Stream to, uint value)
    {
        Span<byte> bytes = stackalloc byte[4];
        BinaryPrimitives.WriteUInt32LittleEndian(bytes, value);
        to.Write(bytes);
    }

    // Standard: CRC-32 of ISO 3309, reflected polynomial EDB88320 (APPNOTE.TXT 4.4.7).
    private static uint CrcOf(int value)
    {
        var crc = (uint)value;
        for (var bit = 0; bit < 8; bit++)
        {
            crc = (crc & 1) == 0 ? crc >> 1 : (crc >> 1) ^ 0xEDB88320;
        }

        return crc;
    }

    private static uint Crc(ReadOnlySpan<byte> content)
    {
        var crc = uint.MaxValue;
        foreach (var value in content)
        {
            crc = (crc >> 8) ^ CrcTable[(byte)(crc ^ value)];
        }

        return ~crc;
    }
}
