using System.Globalization;
using FarmPortfolio.Engine;

namespace FarmPortfolio.Host.Loading;

/// <summary>Months as they are read, in either direction, then checked for gaps, doubles and stretches in another unit.</summary>
/// <param name="faults">Where to say what is wrong.</param>
/// <param name="fuel">Fuel the price is said to be for; null = not said.</param>
internal sealed class PriceTable(FaultList faults, FuelKind? fuel = null)
{
    /// <summary>Fewest months that a volatility is fitted to.</summary>
    public const int FewestMonths = 24;

    // no fuel's monthly mean has moved by this factor from one month to the next; a hundred (cents) and ten (gallons, therms) have
    private const double UnbelievableStep = 8;

    // a gallon is 3.8 litres, and 4.2 pounds of propane; the records that ship have no month over 2.2 times the one before, and a spike falls back
    private const double UnbelievableIfItLasts = 3;
    private const int LastingMonths = 6;

    private readonly SortedDictionary<DateOnly, (double Usd, int Line, int Column)> months = [];
    private readonly List<(DateOnly Month, int Line, int Column)> order = [];
    private string? currency;
    private int currencyLine;

    /// <summary>Months met.</summary>
    public int Count => months.Count;

    /// <summary>Adds a cell.</summary>
    /// <param name="month">Month.</param>
    /// <param name="cell">Price as written.</param>
    /// <param name="toUsd">Factor to dollars.</param>
    /// <param name="line">Line.</param>
    /// <param name="monthColumn">Column of the month.</param>
    /// <param name="column">Column of the price.</param>
    public void Add(DateOnly month, string? cell, double toUsd, int line, int monthColumn, int column)
    {
        if (string.IsNullOrWhiteSpace(cell) || cell is "NA" or "-" or "." or "--" or "W")
        {
            return;
        }

        var (number, mark) = PriceCurrency.Split(cell);
        if (mark is not null && !InOneCurrency(mark, line, column))
        {
            return;
        }

        if (!double.TryParse(number, NumberStyles.Float, CultureInfo.InvariantCulture, out var price) || !double.IsFinite(price))
        {
            faults.Add("NOT_A_NUMBER", "price", $"\"{WeatherCells.Short(cell)}\" is no price.", cell.Contains(',', StringComparison.Ordinal) ? "Write decimals with a point." : "Give dollars a unit, such as 2.35.", line, column);
        }
        else if (!(price > 0))
        {
            faults.Add("NOT_POSITIVE", "price", $"The price of {month:yyyy-MM} is {cell}.", NotPositiveRemedy(fuel), line, column);
        }
        else if (months.TryGetValue(month, out var known))
        {
            faults.Add("DOUBLED", "month", $"{month:yyyy-MM} stands in the file twice, first in line {known.Line}.", "Keep one price a month; the first is taken.", line, monthColumn);
        }
        else
        {
            months.Add(month, (price * toUsd, line, column));
            order.Add((month, line, monthColumn));
        }
    }

    /// <summary>Takes down the money that a head names; null = it names none.</summary>
    public void Told(string? code, int line) => (currency, currencyLine) = (code, line);

    /// <summary>Whether a price is in the money of those before; says so where it is not.</summary>
    public bool InOneCurrency(string code, int line, int column)
    {
        (currency, currencyLine) = currency is null ? (code, line) : (currency, currencyLine);
        if (code == currency)
        {
            return true;
        }

        faults.Add("TWO_CURRENCIES", "price", $"The price is in {WeatherCells.Short(code)}, the file before it in {WeatherCells.Short(currency)} (line {currencyLine}).", "Bring the whole file to US dollars at each month's rate; the row is left out.", line, column);
        return false;
    }

    /// <summary>Whether the file is in other money than US dollars; says so where it is.</summary>
    public bool IsForeign()
    {
        if (currency is null or PriceCurrency.Dollar)
        {
            return false;
        }

        faults.Add("NOT_DOLLARS", "price", $"The prices are in {WeatherCells.Short(currency)}.", "Bring them to US dollars at each month's rate; nothing is converted here.", currencyLine);
        return true;
    }

    /// <summary>What would be right where a price is zero or below: electricity can be, gallons cannot.</summary>
    internal static string NotPositiveRemedy(FuelKind? fuel) => fuel switch
    {
        FuelKind.Electricity => "Electricity at a market can cost nothing or less for hours, but futures move a price by percent and need one above 0: give the month's mean as paid, fees included, or leave the month out.",
        null => "A price paid a month is above 0 (an hour of electricity at a market may not be); leave the month out if it is not known.",
        _ => "Only electricity at a market can cost nothing or less; fuel that is delivered cannot. Give what was paid, or leave the month out.",
    };

    /// <summary>Checks the months and lays them out.</summary>
    /// <returns>First month and prices.</returns>
    public (DateOnly First, IReadOnlyList<double?> Prices) Finish()
    {
        Order();
        Steps();
        Gaps();
        if (months.Count < FewestMonths)
        {
            faults.Add("SHORT", null, $"The record has {months.Count} months.", $"It is taken, but under {FewestMonths} months only its last price counts; how prices move is the class's default.");
        }

        var (first, last) = (months.Keys.First(), months.Keys.Last());
        return (first, [.. Enumerable.Range(0, Span(first, last) + 1).Select(i => months.TryGetValue(first.AddMonths(i), out var v) ? v.Usd : (double?)null)]);
    }

    private static int Span(DateOnly from, DateOnly to) => 12 * (to.Year - from.Year) + to.Month - from.Month;

    private void Order()
    {
        var falling = order.Zip(order.Skip(1)).Count(p => p.Second.Month < p.First.Month) > order.Count / 2;
        foreach (var (a, b) in order.Zip(order.Skip(1)).Where(p => falling ? p.Second.Month > p.First.Month : p.Second.Month < p.First.Month))
        {
            faults.Add("OUT_OF_ORDER", "month", $"{b.Month:yyyy-MM} comes after {a.Month:yyyy-MM}.", "Sort the rows by month; the price is taken where it belongs.", b.Line, b.Column);
        }
    }

    /// <summary>A step no market makes parts the record; the longest part stands, the others are left out.</summary>
    private void Steps()
    {
        var parts = new List<List<DateOnly>>();
        var before = double.NaN;
        var prices = months.Values.Select(v => v.Usd).ToArray();
        foreach (var ((month, (usd, line, column)), at) in months.Select((m, i) => (m, i)))
        {
            if (double.IsNaN(before) || IsStep(usd / before, UnbelievableStep) || (IsStep(usd / before, UnbelievableIfItLasts) && Lasts(prices, at)))
            {
                if (!double.IsNaN(before))
                {
                    faults.Add("MIXED_UNIT", "price", string.Create(CultureInfo.InvariantCulture, $"The price goes from {before:0.####} to {usd:0.####} dollars in {month:yyyy-MM}: two units, or cents among dollars."),
                        "Bring the whole file to one unit; the longer part is taken.", line, column);
                }

                parts.Add([]);
            }

            parts[^1].Add(month);
            before = usd;
        }

        // parts of the same unit stand on every second place
        var longest = parts.Select((p, i) => (p, i)).GroupBy(x => x.i % 2).OrderByDescending(g => g.Sum(x => x.p.Count)).First().Key;
        foreach (var month in parts.Where((_, i) => i % 2 != longest).SelectMany(p => p))
        {
            months.Remove(month);
        }
    }

    private static bool IsStep(double ratio, double factor) => ratio >= factor || ratio <= 1 / factor;

    /// <summary>Whether the middle of the months from a step on is as far from the middle of those before it; with fewer than three months on a side nobody can tell.</summary>
    private static bool Lasts(double[] prices, int at)
    {
        var (earlier, later) = (prices[Math.Max(0, at - LastingMonths)..at], prices[at..Math.Min(prices.Length, at + LastingMonths)]);
        return earlier.Length >= 3 && later.Length >= 3 && IsStep(Middle(later) / Middle(earlier), UnbelievableIfItLasts);
    }

    private static double Middle(double[] prices) => prices.Order().ElementAt(prices.Length / 2);

    private void Gaps()
    {
        foreach (var (a, b) in months.Zip(months.Skip(1)).Where(p => Span(p.First.Key, p.Second.Key) > 1))
        {
            var missing = Span(a.Key, b.Key) - 1;
            faults.Add("GAP", "month", missing == 1 ? $"{a.Key.AddMonths(1):yyyy-MM} is missing." : $"{missing} months from {a.Key.AddMonths(1):yyyy-MM} to {b.Key.AddMonths(-1):yyyy-MM} are missing.",
                "Add them if you can. Gaps of up to two months are filled between their neighbours; a longer one cuts the record.", b.Value.Line);
        }
    }
}
