namespace Linewright.Pictures.Rays;

/// <summary>A node that waits on the stack, and where the ray enters it.</summary>
internal struct Waiting
{
    public int Node;
    public float Entry;
}
