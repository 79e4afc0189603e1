using Linewright.Paper;

namespace Linewright.Sheets;

/// <summary>The lines and the lettering of a sheet: one line group, told apart by width and dashes alone.</summary>
/// <remarks>
/// Standard: ISO 128-2, line group 0.35: wide 0.35 mm, narrow 0.18 mm. Standard: ISO 3098-1, lettering 2.5 and 3.5 mm; small
/// print on a sheet that is not to be reduced is 1.8. Standard: ISO 5457, frame 0.7 mm.
/// </remarks>
internal static class SheetPens
{
    /// <summary>Visible edges and contours, and where a section is cut.</summary>
    public static readonly Pen Wide = new(0.35);

    /// <summary>Dimensions, leaders, hatching, stones.</summary>
    public static readonly Pen Narrow = new(0.18);

    /// <summary>Edges behind others.</summary>
    public static readonly Pen Hidden = new(0.18, LineStyle.Dashed);

    /// <summary>Axes and planes of symmetry.</summary>
    public static readonly Pen Axis = new(0.18, LineStyle.Chain);

    /// <summary>Facets of a stone: finer than what is made here.</summary>
    public static readonly Pen Facet = new(0.13);

    /// <summary>The frame of the sheet.</summary>
    public static readonly Pen Frame = new(0.7);

    /// <summary>Ends of a cutting plane.</summary>
    public static readonly Pen Plane = new(0.7);

    /// <summary>Dimensions and notes.</summary>
    public static readonly TextStyle Text = new(2.5);

    /// <summary>Names of views.</summary>
    public static readonly TextStyle Name = new(2.5, TextWeight.Strong);

    /// <summary>Tables and running text.</summary>
    public static readonly TextStyle Small = new(1.8);

    /// <summary>Headings over tables.</summary>
    public static readonly TextStyle Heading = new(3.5, TextWeight.Strong);
}
