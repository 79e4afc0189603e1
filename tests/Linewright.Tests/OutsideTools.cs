using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.RegularExpressions;

namespace Linewright.Tests;

/// <summary>Programs that this project did not write, asked to judge its files.</summary>
/// <remarks>
/// A test whose judge is not installed is skipped and says what to install. A judge that crashes, hangs for more
/// than a minute or answers in a form that we do not understand fails the test: silence is no verdict.
/// </remarks>
public static partial class OutsideTools
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private static readonly JsonSerializerOptions Json = new() { PropertyNamingPolicy = JsonNamingPolicy.CamelCase };

    /// <summary>The repository's root: the nearest folder upwards that holds the solution.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>Asks the solid kernel manifold-3d whether each binary STL is a closed manifold, and how large it is.</summary>
    public static IReadOnlyList<OracleResult> Oracle(params IReadOnlyList<string> paths)
    {
        var answer = RunNode("oracle.mjs", "manifold-3d", paths);
        return JsonSerializer.Deserialize<List<OracleResult>>(answer, Json) ?? throw new InvalidDataException(answer);
    }

    /// <summary>Asks the solid kernel manifold-3d whether the parts on a printer's plate, a 3MF, lie apart and inside it.</summary>
    /// <param name="path">The file.</param>
    /// <param name="size">Width, depth and height of the plate, mm.</param>
    public static PlateVerdict Plate(string path, params ReadOnlySpan<double> size)
    {
        var answer = RunNode("plate.mjs", "manifold-3d", [path, .. size.ToArray().Select(length => length.ToString(CultureInfo.InvariantCulture))]);
        return JsonSerializer.Deserialize<PlateVerdict>(answer, Json) ?? throw new InvalidDataException(answer);
    }

    /// <summary>Asks Khronos' glTF validator about a GLB file.</summary>
    public static GlbVerdict ValidateGlb(string path)
    {
        var answer = RunNode("validate-glb.mjs", "gltf-validator", [path]);
        return JsonSerializer.Deserialize<GlbVerdict>(answer, Json) ?? throw new InvalidDataException(answer);
    }

    /// <summary>Asks admesh about a binary STL file.</summary>
    public static AdmeshResult Admesh(string path)
    {
        var program = FindProgram("admesh");
        Assert.SkipWhen(program is null, "admesh is not installed (Debian package admesh)");
        var answer = Run(program!, [path]);
        return new AdmeshResult(
            (int)Read("Number of facets"), (int)Read("Number of parts"), (int)Read("Total disconnected facets"),
            (int)Read("Degenerate facets"), (int)Read("Facets reversed"), (int)Read("Backwards edges"), Read("Volume"));

        double Read(string label)
        {
            var found = Regex.Match(answer, Regex.Escape(label) + @"\s*:\s*(-?[0-9.eE+]+)", RegexOptions.None, Patience);
            return found.Success
                ? double.Parse(found.Groups[1].ValueSpan, CultureInfo.InvariantCulture)
                : throw new InvalidDataException($"admesh says nothing about '{label}':\n{answer}");
        }
    }

    /// <summary>Reads a 3MF file with the 3MF Consortium's own library.</summary>
    public static ThreeMfReading Read3mf(string path)
    {
        Assert.SkipUnless(NativeLibrary.TryLoad(Lib3mf.Library, out _), "lib3MF is not installed (Debian package lib3mf1)");
        return Lib3mf.Read(path);
    }

    /// <summary>Asks qpdf whether a PDF file is sound; anything it has to say beside that fails.</summary>
    public static void CheckPdf(string path)
    {
        var program = FindProgram("qpdf");
        Assert.SkipWhen(program is null, "qpdf is not installed (Debian package qpdf)");
        Assert.Contains("No syntax or stream encoding errors found", Run(program!, ["--check", path]), StringComparison.Ordinal);
    }

    /// <summary>The text of a PDF file, page after page, each ending with a form feed, as poppler lays it out.</summary>
    public static string PdfText(string path)
    {
        var program = FindProgram("pdftotext");
        Assert.SkipWhen(program is null, "pdftotext is not installed (Debian package poppler-utils)");
        return Run(program!, ["-layout", path, "-"]);
    }

    /// <summary>Asks the package dxf-parser what is in a DXF file.</summary>
    public static DxfReading ReadDxf(string path)
    {
        var answer = RunNode("read-dxf.mjs", "dxf-parser", [path]);
        return JsonSerializer.Deserialize<DxfReading>(answer, Json) ?? throw new InvalidDataException(answer);
    }

    private static string RunNode(string script, string package, IReadOnlyList<string> arguments)
    {
        var folder = Path.Combine(Root, "tools", "oracle");
        var node = FindProgram("node");
        Assert.SkipWhen(node is null, "node is not installed");
        Assert.SkipUnless(
            Directory.Exists(Path.Combine(folder, "node_modules", package)), $"{package} is not installed (npm ci in tools/oracle)");
        return Run(node!, [Path.Combine(folder, script), .. arguments]);
    }

    private static string Run(string program, IReadOnlyList<string> arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["LC_ALL"] = "C";
        using var process = Process.Start(start) ?? throw new InvalidOperationException($"{program} did not start");
        var output = process.StandardOutput.ReadToEndAsync();
        var complaint = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(Patience))
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException(string.Create(CultureInfo.InvariantCulture, $"{program} did not answer within {Patience.TotalSeconds} s"));
        }

        return process.ExitCode == 0
            ? output.GetAwaiter().GetResult()
            : throw new InvalidDataException(string.Create(
                CultureInfo.InvariantCulture, $"{program} ended with {process.ExitCode}: {complaint.GetAwaiter().GetResult()}"));
    }

    private static string? FindProgram(string name)
        => (Environment.GetEnvironmentVariable("PATH") ?? string.Empty)
            .Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries)
            .SelectMany(folder => new[] { Path.Combine(folder, name), Path.Combine(folder, name + ".exe") })
            .FirstOrDefault(File.Exists);

    private static string FindRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Linewright.slnx")))
            {
                return folder.FullName;
            }
        }

        throw new DirectoryNotFoundException("no folder above the tests holds Linewright.slnx");
    }
}

/// <summary>What manifold-3d says about one STL. mm3 and mm2; genus 0 for a ball, 1 for a ring; status "NoError" when closed and oriented.</summary>
public sealed record OracleResult(string File, string Status, double Volume, double Area, int Genus, int Triangles, int Bodies)
{
    /// <summary>True where the file holds closed, oriented 2-manifolds only.</summary>
    [JsonIgnore]
    public bool IsManifold => string.Equals(Status, "NoError", StringComparison.Ordinal);
}

/// <summary>What manifold-3d says about a plate: mm and mm3; apart where the union of all parts is as large as their sum.</summary>
public sealed record PlateVerdict(
    string Status, int Objects, int Parts, int Bodies, double Volume, double Union, bool Apart, bool Inside, IReadOnlyList<double> Low, IReadOnlyList<double> High);

/// <summary>What Khronos' validator says: counts by severity, and each message with its place.</summary>
public sealed record GlbVerdict(
    int Errors, int Warnings, int Infos, int Hints, IReadOnlyList<string> Messages, int DrawCalls, int Triangles, int Vertices,
    IReadOnlyList<string> Extensions);

/// <summary>What admesh counted after its checks, and the volume that it measured, mm3.</summary>
public sealed record AdmeshResult(
    int Facets, int Parts, int DisconnectedFacets, int DegenerateFacets, int ReversedFacets, int BackwardsEdges, double Volume);

/// <summary>What dxf-parser read: the version, the line types, and each layer's lines with their length and box, mm.</summary>
public sealed record DxfReading(string Version, IReadOnlyList<string> LineTypes, int Entities, IReadOnlyList<DxfLayerReading> Layers);

/// <summary>One layer as dxf-parser read it.</summary>
public sealed record DxfLayerReading(string Name, int Lines, IReadOnlyList<string> Texts, double Length, double Left, double Low, double Right, double High);
