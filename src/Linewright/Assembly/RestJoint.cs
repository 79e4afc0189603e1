using Linewright.Solids.Space;

namespace Linewright.Assembly;

/// <summary>A hinge between two bodies: an eye on one, a bar on the other.</summary>
/// <param name="Eye">Index of the body with the eye.</param>
/// <param name="EyeCentre">Middle of the eye in that body's frame, mm.</param>
/// <param name="Bar">Index of the body with the bar.</param>
/// <param name="BarCentre">Middle of the bar in that body's frame, mm.</param>
/// <param name="Freedom">How the two may lie on each other.</param>
/// <param name="RubMm">Radius at which the eye rubs on its bar: a hinge does not turn for less than that; 0 turns freely.</param>
public sealed record RestJoint(int Eye, Vec3 EyeCentre, int Bar, Vec3 BarCentre, JointFreedom Freedom, double RubMm = 0);
