namespace Linewright.Brief;

/// <summary>How the metal is made.</summary>
/// <param name="ShrinkPercent">Linear shrinkage from pattern to metal.</param>
/// <param name="FinishLossMm">What polishing takes from a face.</param>
/// <param name="TreePercent">Metal in sprues and button over the metal in the parts.</param>
/// <param name="ToleranceMm">One standard deviation of a hole, bar or width as made.</param>
/// <param name="MeshDeviationUm">How far a mesh may lie from the true surface, micrometres.</param>
public sealed record ProcessBrief(double ShrinkPercent, double FinishLossMm, double TreePercent, double ToleranceMm, double MeshDeviationUm);
