using System.Collections.Immutable;
using Linewright.Paper;

namespace Linewright.Sheets;

/// <summary>Blocks in rows and columns, origins in line along both where they must be, spread over a field.</summary>
/// <param name="Fits">Whether they found room side by side.</param>
/// <param name="Marks">All marks where they stand.</param>
internal sealed record Grid(bool Fits, ImmutableArray<Mark> Marks)
{
    // Least air between two blocks, mm.
    private const double AirMm = 4;

    /// <summary>Lays blocks out at the largest scale at which they find room side by side.</summary>
    /// <param name="cellsAt">By row and column, drawn at a scale; null is an empty cell.</param>
    /// <param name="field">Where.</param>
    public static (SheetScale Scale, ImmutableArray<Mark> Marks) Largest(Func<SheetScale, Block?[,]> cellsAt, PaperBox field)
    {
        Grid? laid = null;
        var scale = SheetScale.Largest(candidate => (laid = Lay(cellsAt(candidate), field)).Fits);
        return (scale, laid!.Marks);
    }

    /// <summary>Lays blocks out.</summary>
    /// <param name="cells">By row and column; null is an empty cell.</param>
    /// <param name="field">Where.</param>
    public static Grid Lay(Block?[,] cells, PaperBox field)
    {
        int rows = cells.GetLength(0), columns = cells.GetLength(1);
        double[] before = new double[columns], after = new double[columns], over = new double[rows], under = new double[rows];
        double[] wide = new double[columns], high = new double[rows];
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                switch (cells[row, column])
                {
                    case { IsFree: true } block:
                        wide[column] = Math.Max(wide[column], block.Box.Width);
                        high[row] = Math.Max(high[row], block.Box.Height);
                        break;
                    case { } block:
                        before[column] = Math.Max(before[column], -block.Box.Left);
                        after[column] = Math.Max(after[column], block.Box.Right);
                        over[row] = Math.Max(over[row], -block.Box.Top);
                        under[row] = Math.Max(under[row], block.Box.Bottom);
                        break;
                    default:
                        break;
                }
            }
        }

        for (var column = 0; column < columns; column++)
        {
            wide[column] = Math.Max(wide[column], before[column] + after[column]);
        }

        for (var row = 0; row < rows; row++)
        {
            high[row] = Math.Max(high[row], over[row] + under[row]);
        }

        double spareX = field.Width - wide.Sum(), spareY = field.Height - high.Sum();
        double airX = spareX / (columns + 1), airY = spareY / (rows + 1);
        var marks = ImmutableArray.CreateBuilder<Mark>();
        var y = field.Top;
        for (var row = 0; row < rows; row++)
        {
            y += airY;
            var x = field.Left;
            for (var column = 0; column < columns; column++)
            {
                x += airX;
                if (cells[row, column] is { } block)
                {
                    // What stands in line keeps its origins in line, and the whole of it the middle of the row and the column.
                    marks.AddRange(block.IsFree
                        ? block.CentredAt(new PaperPoint(x + wide[column] / 2, y + high[row] / 2))
                        : block.At(new PaperPoint(
                            x + (wide[column] - before[column] - after[column]) / 2 + before[column],
                            y + (high[row] - over[row] - under[row]) / 2 + over[row])));
                }

                x += wide[column];
            }

            y += high[row];
        }

        return new Grid(spareX >= AirMm * (columns - 1) && spareY >= AirMm * (rows - 1), marks.ToImmutable());
    }
}
