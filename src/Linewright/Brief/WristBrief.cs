namespace Linewright.Brief;

/// <summary>The form of the wrist, a superellipse: depth over breadth, and the exponent.</summary>
public sealed record WristBrief(double DepthRatio, double Exponent);
