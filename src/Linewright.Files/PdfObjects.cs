using System.Globalization;
using System.Text;

namespace Linewright.Files;

/// <summary>The numbered objects of a PDF file, its table of where they lie, its end.</summary>
/// <remarks>Source: ISO 32000-1:2008, 7.3 objects and 7.5 file structure.</remarks>
internal sealed class PdfObjects
{
    private readonly List<byte[]> objects = [];

    /// <summary>A number for an object that is set later.</summary>
    public int Reserve()
    {
        objects.Add([]);
        return objects.Count;
    }

    /// <summary>Adds an object in ASCII.</summary>
    public int Add(string text)
    {
        objects.Add(Encoding.ASCII.GetBytes(text));
        return objects.Count;
    }

    /// <summary>Fills a reserved number.</summary>
    public void Set(int number, string text) => objects[number - 1] = Encoding.ASCII.GetBytes(text);

    /// <summary>Adds a stream, unpacked, with further entries for its dictionary.</summary>
    public int AddStream(string entries, byte[] data)
    {
        var head = FormattableString.Invariant($"<< /Length {data.Length}{entries} >>\nstream\n");
        objects.Add([.. Encoding.ASCII.GetBytes(head), .. data, .. "\nendstream"u8]);
        return objects.Count;
    }

    /// <summary>Text for people, in UTF-16 as hexadecimal digits.</summary>
    public static string TextString(string text) => $"<FEFF{Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(text))}>";

    /// <summary>The whole file; its identifier is made from its contents.</summary>
    public byte[] Bytes(int catalogue, int info, Func<byte[], byte[]> digest)
    {
        using var file = new MemoryStream();
        void Put(string text) => file.Write(Encoding.ASCII.GetBytes(text));

        // Four bytes over 127 tell a transfer program that the file is binary.
        file.Write("%PDF-1.7\n%\u00e2\u00e3"u8);
        Put("\n");
        var offsets = new List<long>();
        for (var i = 0; i < objects.Count; i++)
        {
            offsets.Add(file.Length);
            Put(string.Create(CultureInfo.InvariantCulture, $"{i + 1} 0 obj\n"));
            file.Write(objects[i]);
            Put("\nendobj\n");
        }

        var identifier = Convert.ToHexString(digest(file.ToArray()).AsSpan(0, 16));
        var table = file.Length;
        Put(string.Create(CultureInfo.InvariantCulture, $"xref\n0 {objects.Count + 1}\n0000000000 65535 f \n"));
        offsets.ForEach(offset => Put(string.Create(CultureInfo.InvariantCulture, $"{offset:0000000000} 00000 n \n")));
        Put(string.Create(
            CultureInfo.InvariantCulture,
            $"trailer\n<< /Size {objects.Count + 1} /Root {catalogue} 0 R /Info {info} 0 R /ID [<{identifier}> <{identifier}>] >>\nstartxref\n{table}\n%%EOF\n"));
        return file.ToArray();
    }
}
