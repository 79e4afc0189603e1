namespace Linewright.Layout;

/// <summary>One count of links with the pitch and clasp it would take; not yet judged against the others.</summary>
/// <param name="Count">Links.</param>
/// <param name="Pitch">Pitch taken, mm.</param>
/// <param name="Clasp">Clasp taken, mm.</param>
/// <param name="ClaspAtPreferred">What the preferred gap would leave for the clasp, mm.</param>
/// <param name="Kept">Whether the preferred gap was kept.</param>
internal readonly record struct Sized(int Count, double Pitch, double Clasp, double ClaspAtPreferred, bool Kept);
