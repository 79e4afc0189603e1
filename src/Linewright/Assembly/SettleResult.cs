using System.Collections.Immutable;
using Linewright.Solids.Space;

namespace Linewright.Assembly;

/// <summary>Bodies come to rest.</summary>
/// <param name="Poses">Where each lies.</param>
/// <param name="EnergyMicroJoule">Potential energy over the ground at the start and after each stage; it falls.</param>
/// <param name="Steps">How many steps it took.</param>
/// <param name="Unborne">What share of the whole weight nothing bore in the last steps: their loss of energy over that of falling freely.</param>
/// <param name="ErrorMm">The most by which a joint leaves its freedom or a corner the ground's upper side, mm (radians count at a gyration's arm).</param>
public sealed record SettleResult(
    ImmutableArray<Pose> Poses, ImmutableArray<double> EnergyMicroJoule, int Steps, double Unborne, double ErrorMm)
{
    // Less than this of the weight moves nothing that a picture shows. Assumed.
    private const double MostUnborne = 0.01;

    /// <summary>True where joints and ground bear all but a hundredth of the weight.</summary>
    public bool IsAtRest => Math.Abs(Unborne) < MostUnborne;
}
