using System.Text;
using Linewright.Brief;
using Linewright.Parts;

namespace Linewright.Bench;

/// <summary>Seven inches of equal stones in white gold: the piece that a designer waits for.</summary>
internal static class Bracelet
{
    /// <summary>Solves and builds it for stones of a diameter, mm.</summary>
    public static Piece Of(double stoneMm)
    {
        var json = FormattableString.Invariant(
            $$$"""{"name":"bench","stone":{"diameter_mm":{{{stoneMm}}}},"metal":"gold-750-white-pd","length":{"laid_flat_mm":177.8}}""");
        var read = BriefReader.Read(Encoding.UTF8.GetBytes(json), "bench");
        return read.Brief is { } brief
            ? PartsBuilder.Build(LineDesign.Solve(BriefDefaults.Resolve(brief)))
            : throw new InvalidOperationException(string.Join("; ", read.Messages));
    }
}
