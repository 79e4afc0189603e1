using System.Globalization;
using System.Text;
using Linewright.Solids.Outlines;

namespace Linewright.Files;

/// <summary>Writes outlines as DXF of release 12, which every program that cuts or draws still reads. Millimetres, true scale.</summary>
/// <remarks>
/// Source: Autodesk, DXF Reference, AutoCAD Release 12: group codes in pairs of lines; HEADER, TABLES, ENTITIES; lines of
/// more than two points are POLYLINE with its VERTEX entities, lettering is TEXT. Release 12 has no field for units: they stand in a comment and in the layers' names.
/// The same layers give the same bytes. ASCII, and lines end as on every system of that time, with CR LF.
/// </remarks>
public static class DxfWriter
{
    // Lengths of dash and gap, mm: a dash is drawn, a gap below zero is not.
    private const double DashMm = 0.3, GapMm = 0.12;

    /// <summary>Writes layers and leaves the stream open.</summary>
    /// <param name="stream">Where to write.</param>
    /// <param name="title">A line of comment at the top; what is not ASCII becomes '?'.</param>
    /// <param name="layers">At least one, their names different.</param>
    public static void Write(Stream stream, string title, IReadOnlyList<DxfLayer> layers)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(title);
        ArgumentNullException.ThrowIfNull(layers);
        using var writer = new StreamWriter(stream, Encoding.ASCII, leaveOpen: true) { NewLine = "\r\n" };
        void Put(int code, FormattableString value)
        {
            writer.WriteLine(code.ToString(CultureInfo.InvariantCulture));
            writer.WriteLine(value.ToString(CultureInfo.InvariantCulture));
        }

        var points = layers.SelectMany(layer => layer.Lines.SelectMany(line => line).Concat(layer.Texts.Select(text => text.At))).ToList();
        Put(999, $"Linewright, mm, scale 1:1: {title.ReplaceLineEndings(" ")}");
        Put(0, $"SECTION");
        Put(2, $"HEADER");
        Put(9, $"$ACADVER");
        Put(1, $"AC1009");
        if (points.Count > 0)
        {
            Corner("$EXTMIN", points.Min(p => p.X), points.Min(p => p.Y));
            Corner("$EXTMAX", points.Max(p => p.X), points.Max(p => p.Y));
        }

        Put(0, $"ENDSEC");
        Put(0, $"SECTION");
        Put(2, $"TABLES");
        LineTypes();
        Put(0, $"TABLE");
        Put(2, $"LAYER");
        Put(70, $"{layers.Count}");
        foreach (var layer in layers)
        {
            Put(0, $"LAYER");
            Put(2, $"{layer.Name}");
            Put(70, $"0");

            // 7 is black on white and white on black.
            Put(62, $"7");
            Put(6, $"{(layer.IsDashed ? "DASHED" : "CONTINUOUS")}");
        }

        Put(0, $"ENDTAB");
        Put(0, $"ENDSEC");
        Put(0, $"SECTION");
        Put(2, $"ENTITIES");
        foreach (var layer in layers)
        {
            foreach (var line in layer.Lines)
            {
                Entity(layer.Name, line);
            }

            foreach (var text in layer.Texts)
            {
                Put(0, $"TEXT");
                Put(8, $"{layer.Name}");
                Put(10, $"{text.At.X:0.0#####}");
                Put(20, $"{text.At.Y:0.0#####}");
                Put(40, $"{text.HeightMm:0.0#####}");
                Put(1, $"{text.Text}");
            }
        }

        Put(0, $"ENDSEC");
        Put(0, $"EOF");

        void Corner(string name, double x, double y)
        {
            Put(9, $"{name}");
            Put(10, $"{x:0.0#####}");
            Put(20, $"{y:0.0#####}");
        }

        void LineTypes()
        {
            Put(0, $"TABLE");
            Put(2, $"LTYPE");
            Put(70, $"2");
            foreach (var (name, words, lengths) in new (string, string, double[])[]
            {
                ("CONTINUOUS", "solid line", []),
                ("DASHED", "edges behind others", [DashMm, -GapMm]),
            })
            {
                Put(0, $"LTYPE");
                Put(2, $"{name}");
                Put(70, $"0");
                Put(3, $"{words}");
                Put(72, $"65");
                Put(73, $"{lengths.Length}");
                Put(40, $"{lengths.Sum(Math.Abs):0.0#####}");
                foreach (var length in lengths)
                {
                    Put(49, $"{length:0.0#####}");
                }
            }

            Put(0, $"ENDTAB");
        }

        void Entity(string layer, IReadOnlyList<FlatPoint> line)
        {
            if (line.Count == 2)
            {
                Put(0, $"LINE");
                Put(8, $"{layer}");
                Put(10, $"{line[0].X:0.0#####}");
                Put(20, $"{line[0].Y:0.0#####}");
                Put(11, $"{line[1].X:0.0#####}");
                Put(21, $"{line[1].Y:0.0#####}");
                return;
            }

            // A line that ends where it begins is closed by its flag and not by a double point.
            var isClosed = line[0] == line[^1];
            Put(0, $"POLYLINE");
            Put(8, $"{layer}");
            Put(66, $"1");
            Put(10, $"0.0");
            Put(20, $"0.0");
            Put(30, $"0.0");
            Put(70, $"{(isClosed ? 1 : 0)}");
            for (var i = 0; i < line.Count - (isClosed ? 1 : 0); i++)
            {
                Put(0, $"VERTEX");
                Put(8, $"{layer}");
                Put(10, $"{line[i].X:0.0#####}");
                Put(20, $"{line[i].Y:0.0#####}");
            }

            Put(0, $"SEQEND");
        }
    }
}
