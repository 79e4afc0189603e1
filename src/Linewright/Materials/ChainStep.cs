namespace Linewright.Materials;

/// <summary>A step as one shop and one metal run it.</summary>
/// <param name="Row">The step's row.</param>
/// <param name="Scale">A length after the step over the length before it; 0.994 where it shrinks by 0.6 %.</param>
/// <param name="PolishedLossMm">Taken from a polished face.</param>
public sealed record ChainStep(ProcessStep Row, double Scale, double PolishedLossMm)
{
    /// <summary>What is taken from a face of a kind, mm.</summary>
    public double LossMm(FaceKind face) => face == FaceKind.Polished ? PolishedLossMm : Row.KeptLossMm;
}
