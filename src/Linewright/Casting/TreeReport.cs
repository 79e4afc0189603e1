namespace Linewright.Casting;

/// <summary>One tree, mm and g.</summary>
/// <param name="Parts">How many hang on it.</param>
/// <param name="Rings">The rings, from the button outwards.</param>
/// <param name="StemMm">Diameter of the stem.</param>
/// <param name="StemLengthMm">Length of the stem over the button.</param>
/// <param name="ButtonMm">Radius of the button, half a ball.</param>
/// <param name="HeightMm">From the button's flat to the highest part: what the flask must hold, with investment over it.</param>
/// <param name="WidthMm">Diameter of the cylinder that holds it.</param>
/// <param name="PartsG">Metal in the parts.</param>
/// <param name="SpruesG">Metal in the sprues.</param>
/// <param name="StemG">Metal in the stem.</param>
/// <param name="ButtonG">Metal in the button.</param>
/// <param name="TotalG">To weigh out for this tree.</param>
public sealed record TreeReport(
    int Parts,
    IReadOnlyList<TreeRing> Rings,
    double StemMm,
    double StemLengthMm,
    double ButtonMm,
    double HeightMm,
    double WidthMm,
    double PartsG,
    double SpruesG,
    double StemG,
    double ButtonG,
    double TotalG);
