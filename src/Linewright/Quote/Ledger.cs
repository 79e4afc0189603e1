using System.Globalization;

namespace Linewright.Quote;

/// <summary>Collects the lines of a quote and what is missing, and writes the arithmetic of each.</summary>
internal sealed class Ledger(string currency)
{
    /// <summary>The lines so far.</summary>
    public List<QuoteLine> Lines { get; } = [];

    /// <summary>What is missing so far.</summary>
    public List<MissingPrice> Missing { get; } = [];

    /// <summary>A quantity at a unit price; a price that is null is missing, and then there is no line.</summary>
    /// <param name="group">What it pays for.</param>
    /// <param name="what">In words.</param>
    /// <param name="quantity">How much.</param>
    /// <param name="unit">Of what.</param>
    /// <param name="price">Of a unit.</param>
    /// <param name="path">Where the price stands, or belongs.</param>
    /// <param name="read">Where the quantity was read.</param>
    /// <param name="before">How the quantity or the price came about, where that is not plain; ends with "; ".</param>
    public void Add(QuoteGroup group, string what, decimal quantity, string unit, decimal? price, string path, string read, string before = "")
    {
        if (price is not { } known)
        {
            Need(path, $"a price: {Figure(quantity)} {unit} of {what}");
            return;
        }

        var amount = quantity * known;
        var text = $"{before}{Figure(quantity)} {unit} x {Sum(known)} = {Sum(amount)} {currency}";
        Lines.Add(new QuoteLine(group, what, quantity, unit, known, 1, amount, text, $"{read}; {path}", []));
    }

    /// <summary>Minutes at a price per hour.</summary>
    public void Work(string what, int count, string counted, OperationPrice row)
    {
        var minutes = count * row.Minutes;
        var amount = minutes * row.PerHour / 60;
        var text = $"{count.ToString(CultureInfo.InvariantCulture)} {counted} x {Figure(row.Minutes)} min = {Figure(minutes)} min; {Figure(minutes)} min / 60 x {Sum(row.PerHour)} per hour = {Sum(amount)} {currency}";
        Lines.Add(new QuoteLine(QuoteGroup.Labour, what, minutes, "min", row.PerHour, 60, amount, text, $"counted on the piece; {row.Path}, rate {row.Rate}", []));
    }

    /// <summary>A percentage of what some groups cost so far.</summary>
    public void Percent(QuoteGroup group, string what, decimal? percent, string path, params QuoteGroup[] of)
    {
        if (percent is not { } known)
        {
            Need(path, $"a percentage: {what}; write 0 where the shop takes none");
            return;
        }

        var sum = Lines.Where(line => of.Contains(line.Group)).Sum(line => line.Amount);
        var amount = sum * known / 100;
        Lines.Add(new QuoteLine(group, what, known, "%", sum, 100, amount, $"{Figure(known)} % of {Sum(sum)} = {Sum(amount)} {currency}", path, of));
    }

    /// <summary>Names a price that is missing, once.</summary>
    public void Need(string path, string needed)
    {
        var missing = new MissingPrice(path, needed);
        if (!Missing.Contains(missing))
        {
            Missing.Add(missing);
        }
    }

    /// <summary>A plain figure, at most six places.</summary>
    public static string Figure(decimal value) => value.ToString("0.######", CultureInfo.InvariantCulture);

    /// <summary>Money, two places at least and at most six.</summary>
    public static string Sum(decimal value) => value.ToString("0.00####", CultureInfo.InvariantCulture);
}
