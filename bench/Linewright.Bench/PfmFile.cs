using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using Linewright.Pictures.Images;

namespace Linewright.Bench;

/// <summary>Reads back a picture that <see cref="PfmWriter"/> wrote, so that a truth is drawn once.</summary>
internal static class PfmFile
{
    /// <summary>The picture in a file; alpha 1 everywhere, noise unknown.</summary>
    public static Picture Read(string path)
    {
        var bytes = File.ReadAllBytes(path);
        var lines = new string[3];
        var at = 0;
        for (var i = 0; i < lines.Length; i++)
        {
            var end = Array.IndexOf(bytes, (byte)'\n', at);
            lines[i] = Encoding.ASCII.GetString(bytes, at, end - at);
            at = end + 1;
        }

        var sides = lines[1].Split(' ').Select(side => int.Parse(side, CultureInfo.InvariantCulture)).ToArray();
        var size = new PictureSize(sides[0], sides[1]);
        if (lines[0] != "PF" || lines[2] != "-1.0" || bytes.Length - at != 12 * size.Count)
        {
            throw new InvalidDataException(FormattableString.Invariant($"{path}: expected colour, lowest byte first, and {size.Width} by {size.Height} pixels after the head"));
        }

        // Bottom row first in the file.
        var colour = new float[3 * size.Count];
        for (var y = 0; y < size.Height; y++)
        {
            var row = bytes.AsSpan(at + 12 * size.Width * (size.Height - 1 - y), 12 * size.Width);
            MemoryMarshal.Cast<byte, float>(row).CopyTo(colour.AsSpan(3 * size.Width * y));
        }

        var alpha = new float[size.Count];
        alpha.AsSpan().Fill(1);
        return new Picture(size, colour, alpha, new NoiseEstimate(1, 1, [], 0, 0), null);
    }
}
