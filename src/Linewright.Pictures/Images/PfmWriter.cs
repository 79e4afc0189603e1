using System.Buffers.Binary;
using System.Globalization;
using System.Text;

namespace Linewright.Pictures.Images;

/// <summary>Writes linear light as a portable float map: a line of text, then 32-bit numbers, bottom row first.</summary>
/// <remarks>Source: Debevec (1998), PFM format. No clipping, no white balance; alpha is not kept.</remarks>
public static class PfmWriter
{
    /// <summary>Writes the picture's colour; the stream stays open.</summary>
    public static void Write(Stream stream, Picture picture)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(picture);
        var (width, height) = (picture.Size.Width, picture.Size.Height);

        // A negative scale says that the lowest byte comes first.
        stream.Write(Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"PF\n{width} {height}\n-1.0\n")));
        var row = new byte[width * 12];
        for (var y = height - 1; y >= 0; y--)
        {
            for (var i = 0; i < width * 3; i++)
            {
                BinaryPrimitives.WriteSingleLittleEndian(row.AsSpan(4 * i), picture.Colour[y * width * 3 + i]);
            }

            stream.Write(row);
        }
    }
}
