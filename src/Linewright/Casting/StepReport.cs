namespace Linewright.Casting;

/// <summary>One step of the chain as this piece takes it.</summary>
/// <param name="Step">Key.</param>
/// <param name="Name">In the trade's words.</param>
/// <param name="ShrinkPercent">Linear shrinkage.</param>
/// <param name="PolishedLossMm">Taken from a polished face.</param>
/// <param name="KeptLossMm">Taken from a bearing, bore, bar or catch.</param>
/// <param name="ScaleSpreadPercent">One standard deviation of the scale.</param>
/// <param name="FaceSpreadMm">One standard deviation of where a face comes to lie.</param>
/// <param name="LossSpreadMm">One standard deviation of the loss.</param>
/// <param name="Source">Where the figures come from.</param>
/// <param name="Mark">How far they are to be trusted.</param>
public sealed record StepReport(
    string Step,
    string Name,
    double ShrinkPercent,
    double PolishedLossMm,
    double KeptLossMm,
    double ScaleSpreadPercent,
    double FaceSpreadMm,
    double LossSpreadMm,
    string Source,
    string Mark);
