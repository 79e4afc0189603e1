namespace Linewright.Sheets;

/// <summary>Which way views are laid out. Standard: ISO 5456-2: the view from above stands below the front view in first angle, above it in third.</summary>
internal enum Projection
{
    /// <summary>European practice: what one sees from the left stands at the right.</summary>
    FirstAngle,

    /// <summary>American practice: what one sees from the left stands at the left.</summary>
    ThirdAngle,
}
