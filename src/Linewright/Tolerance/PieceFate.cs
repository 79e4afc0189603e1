namespace Linewright.Tolerance;

/// <summary>What became of one piece: which demands it met, and which it would have met had one tolerance been exact.</summary>
[Flags]
internal enum PieceFate
{
    None = 0,

    /// <summary>Every bar turns in its eye.</summary>
    Bores = 1,

    /// <summary>Every eye runs between its cheeks.</summary>
    Sides = 1 << 1,

    /// <summary>The tongue goes in and, pressed, comes out.</summary>
    Closes = 1 << 2,

    /// <summary>The catch holds.</summary>
    Holds = 1 << 3,

    /// <summary>No wall is under its limit.</summary>
    Walls = 1 << 4,

    /// <summary>No wall is so far under its limit that its casting would be refused.</summary>
    Accepted = 1 << 10,

    /// <summary>Sides, were the faces of the trees exact.</summary>
    SidesWithoutFaces = 1 << 5,

    /// <summary>Sides, were each casting exact.</summary>
    SidesWithoutSizes = 1 << 6,

    /// <summary>The clasp, were the faces of the trees exact.</summary>
    ClaspWithoutFaces = 1 << 7,

    /// <summary>The clasp, were each casting exact.</summary>
    ClaspWithoutSizes = 1 << 8,

    /// <summary>The clasp, were the strip exact.</summary>
    ClaspWithoutStrip = 1 << 9,

    /// <summary>Runs free.</summary>
    Free = Bores | Sides,

    /// <summary>The clasp does its work.</summary>
    Clasp = Closes | Holds,

    /// <summary>A piece that need not go back.</summary>
    Good = Free | Clasp,
}
