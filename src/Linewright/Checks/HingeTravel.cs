using Linewright.Solids.Measures;
using Linewright.Solids.Space;

namespace Linewright.Checks;

/// <summary>How far one link slides on the next from contact to contact, and what meets at either end.</summary>
/// <param name="TravelMm">From end to end.</param>
/// <param name="Words">What meets, both ends.</param>
internal sealed record HingeTravel(double TravelMm, string Words)
{
    // Ten times the play of any hinge.
    private const double MostMm = 1;

    /// <summary>Along the line: the diametral clearance where nothing but the bar and its eye meet.</summary>
    public static HingeTravel Along(Joint joint) => Measure(joint, Vec3.UnitX);

    /// <summary>Across the line, along the bar: two side clearances.</summary>
    public static HingeTravel Across(Joint joint) => Measure(joint, Vec3.UnitY);

    private static HingeTravel Measure(Joint joint, Vec3 direction)
    {
        string Name(FirstContactResult end, Vec3 way)
            => joint.Words(end.Nearest, Pose.Move(way * end.Angle).Then(joint.Next(joint.SharedMm)));
        FirstContactResult there = joint.Slide(direction, MostMm), back = joint.Slide(-direction, MostMm);
        string first = Name(there, direction), second = Name(back, -direction);
        return new HingeTravel(there.Angle + back.Angle, first == second ? first : $"{first}; {second}");
    }
}
