namespace Linewright.Brief;

/// <summary>How the metal is made, and how far it may come out otherwise. Spreads are one standard deviation.</summary>
/// <param name="Route">Key of the chain of steps.</param>
/// <param name="ShrinkPercent">Linear shrinkage from pattern to metal, over the whole chain.</param>
/// <param name="FinishLossMm">What tumbling and polishing take from a face.</param>
/// <param name="ToleranceMm">Spread of a hole, bar or width as cast, of each on its own.</param>
/// <param name="ScaleSpreadPercent">Spread of a tree's scale, in which all its parts share.</param>
/// <param name="CommonSpreadUm">Spread of where all faces of a tree come to lie together, micrometres.</param>
/// <param name="FinishSpreadUm">Spread of what finishing takes from a face, micrometres.</param>
/// <param name="FitSpreadUm">Spread of a joint's clearance on the diameter as the bench leaves it, micrometres; null for what the kind of joint gives.</param>
/// <param name="WallReserveMm">How much over its least every derived wall is drawn.</param>
/// <param name="WallShortfallMm">How far a finished wall may come out under the least one for drawings before the casting is refused.</param>
/// <param name="MeshDeviationUm">How far a mesh may lie from the true surface, micrometres.</param>
/// <param name="SprueMm">Diameter of a sprue; null to derive it from what it feeds.</param>
/// <param name="SprueLengthMm">From the part to the stem.</param>
/// <param name="StemMm">Diameter of the tree's stem; null to derive it from the sprues.</param>
/// <param name="PartsPerTree">Most parts on one tree.</param>
/// <param name="PlateXMm">Width of the printer's plate.</param>
/// <param name="PlateYMm">Depth of the printer's plate.</param>
/// <param name="PlateZMm">Height that the printer builds.</param>
/// <param name="PlateGapMm">Least gap between two parts on a plate, and on a tree.</param>
public sealed record ProcessBrief(
    string Route,
    double ShrinkPercent,
    double FinishLossMm,
    double ToleranceMm,
    double ScaleSpreadPercent,
    double CommonSpreadUm,
    double FinishSpreadUm,
    double? FitSpreadUm,
    double WallReserveMm,
    double WallShortfallMm,
    double MeshDeviationUm,
    double? SprueMm,
    double SprueLengthMm,
    double? StemMm,
    int PartsPerTree,
    double PlateXMm,
    double PlateYMm,
    double PlateZMm,
    double PlateGapMm);
