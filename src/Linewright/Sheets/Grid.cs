using System.Collections.Immutable;
using Linewright.Paper;

namespace Linewright.Sheets;

/// <summary>Blocks in rows and columns, their origins in line along both, spread over a field.</summary>
/// <param name="Fits">Whether they found room side by side.</param>
/// <param name="Marks">All marks where they stand.</param>
internal sealed record Grid(bool Fits, ImmutableArray<Mark> Marks)
{
    // Least air between two blocks, mm.
    private const double AirMm = 4;

    /// <summary>Lays blocks out.</summary>
    /// <param name="cells">By row and column; null is an empty cell.</param>
    /// <param name="field">Where.</param>
    public static Grid Lay(Block?[,] cells, PaperBox field)
    {
        int rows = cells.GetLength(0), columns = cells.GetLength(1);
        double[] before = new double[columns], after = new double[columns], over = new double[rows], under = new double[rows];
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                if (cells[row, column] is { } block)
                {
                    before[column] = Math.Max(before[column], -block.Box.Left);
                    after[column] = Math.Max(after[column], block.Box.Right);
                    over[row] = Math.Max(over[row], -block.Box.Top);
                    under[row] = Math.Max(under[row], block.Box.Bottom);
                }
            }
        }

        double spareX = field.Width - before.Sum() - after.Sum(), spareY = field.Height - over.Sum() - under.Sum();
        double airX = spareX / (columns + 1), airY = spareY / (rows + 1);
        var marks = ImmutableArray.CreateBuilder<Mark>();
        var y = field.Top;
        for (var row = 0; row < rows; row++)
        {
            y += airY + over[row];
            var x = field.Left;
            for (var column = 0; column < columns; column++)
            {
                x += airX + before[column];
                if (cells[row, column] is { } block)
                {
                    marks.AddRange(block.At(new PaperPoint(x, y)));
                }

                x += after[column];
            }

            y += under[row];
        }

        return new Grid(spareX >= AirMm * (columns - 1) && spareY >= AirMm * (rows - 1), marks.ToImmutable());
    }
}
