using System.Text;
using Linewright.Assembly;
using Linewright.Brief;
using Linewright.Casting;
using Linewright.Parts;

namespace Linewright.Tests.Core;

/// <summary>Pieces that several tests look at, each built and meshed once.</summary>
internal static class CheckedPieces
{
    private static readonly Lazy<PieceModel> FourYellow = new(() => PieceModel.Build(Piece(4.0, "gold-750-yellow")));
    private static readonly Lazy<CastingPatterns> FourCasting = new(() => CastingPlans.Patterns(CastingPlans.Of(Yellow.Piece)));
    private static readonly Lazy<CastingPatterns> TwoCasting = new(() => CastingPlans.Patterns(CastingPlans.Of(White.Piece)));
    private static readonly Lazy<PieceModel> TwoWhite = new(() => PieceModel.Build(Piece(2.0, "gold-750-white-pd")));

    /// <summary>Seven inches of 4 mm stones, eye over bar.</summary>
    public static PieceModel Yellow => FourYellow.Value;

    /// <summary>Seven inches of 2 mm stones, pinned knuckles.</summary>
    public static PieceModel White => TwoWhite.Value;

    /// <summary>The casting of <see cref="Yellow"/>: one tree.</summary>
    public static CastingPatterns YellowCasting => FourCasting.Value;

    /// <summary>The casting of <see cref="White"/>: two trees.</summary>
    public static CastingPatterns WhiteCasting => TwoCasting.Value;

    /// <summary>A line of seven inches as solids, not meshed. Everything that decides a verdict here is spelled out.</summary>
    /// <param name="diameter">Of the stones, mm.</param>
    /// <param name="metal">The alloy's key.</param>
    /// <param name="more">Further groups of the brief, JSON, beginning with a comma.</param>
    public static Piece Piece(double diameter, string metal, string more = "") => PartsBuilder.Build(Design(diameter, metal, more));

    /// <summary>The same as numbers only.</summary>
    public static LineDesign Design(double diameter, string metal, string more = "")
    {
        var json = FormattableString.Invariant(
            $$"""{"name":"t","stone":{"cut":"round","species":"diamond","diameter_mm":{{diameter}}},"metal":"{{metal}}","length":{"laid_flat_mm":177.8},"process":{"mesh_deviation_um":50}{{more}}}""");
        var read = BriefReader.Read(Encoding.UTF8.GetBytes(json), "test");
        return LineDesign.Solve(BriefDefaults.Resolve(read.Brief ?? throw new InvalidOperationException(string.Join("; ", read.Faults))));
    }
}
