namespace FarmPortfolio.Engine.Fuel;

/// <summary>A monthly record made ready for fitting: the longest piece without a long gap, in logs.</summary>
/// <param name="FirstMonthOn">First month of the piece.</param>
/// <param name="LogPrices">Natural logs, one a month.</param>
/// <param name="Filled">Months filled between neighbours.</param>
/// <param name="Dropped">Months left outside the piece.</param>
public sealed record PriceRecord(DateOnly FirstMonthOn, double[] LogPrices, int Filled, int Dropped)
{
    /// <summary>Months that a gap may have to be filled by a straight line in logs.</summary>
    public const int LongestFilledMonths = 2;

    /// <summary>Fewest months that a fit uses.</summary>
    public const int FewestMonths = 24;

    /// <summary>Last month of the piece.</summary>
    public DateOnly LastMonthOn => FirstMonthOn.AddMonths(LogPrices.Length - 1);

    /// <summary>Prepares a series.</summary>
    /// <param name="series">The series.</param>
    /// <returns>The record, null when it cannot be used, and the faults by month.</returns>
    public static (PriceRecord? Record, IReadOnlyList<Fault> Faults) Of(PriceSeriesFacts series)
    {
        var faults = new List<Fault>();
        var logs = new double[series.UsdPerUnit.Count];
        for (var i = 0; i < logs.Length; i++)
        {
            logs[i] = double.NaN;
            if (series.UsdPerUnit[i] is not { } price)
            {
                continue;
            }

            if (!(price > 0) || !double.IsFinite(price))
            {
                var month = series.FirstMonthOn.AddMonths(i);
                faults.Add(new("NOT_POSITIVE", "usdPerUnit", $"The price of {month:yyyy-MM} is {price}.", series.Fuel == FuelKind.Electricity
                    ? "Electricity at a market can be at 0 or below for hours, but futures move a price by percent: give the month's mean as paid, above 0, or leave the month out."
                    : $"A {series.Unit} cannot cost 0 or less: give what was paid, or leave the month out."));
            }
            else
            {
                logs[i] = Math.Log(price);
            }
        }

        if (faults.Count > 0)
        {
            return (null, faults);
        }

        var filled = Fill(logs);
        var (start, length) = Longest(logs);
        if (length == 0)
        {
            return (null, [new("EMPTY", "usdPerUnit", "The record holds no price.", "Give one price a month.")]);
        }

        var known = logs.Count(l => !double.IsNaN(l));
        return (new(series.FirstMonthOn.AddMonths(start), logs[start..(start + length)], filled, known - length), []);
    }

    private static int Fill(double[] logs)
    {
        var filled = 0;
        for (var i = 1; i < logs.Length; i++)
        {
            if (!double.IsNaN(logs[i]) || double.IsNaN(logs[i - 1]))
            {
                continue;
            }

            var end = i;
            while (end < logs.Length && double.IsNaN(logs[end]))
            {
                end++;
            }

            if (end == logs.Length || end - i > LongestFilledMonths)
            {
                i = end;
                continue;
            }

            var (from, to, before) = (logs[i - 1], logs[end], i - 1);
            for (; i < end; i++)
            {
                logs[i] = from + (to - from) * (i - before) / (end - before);
                filled++;
            }
        }

        return filled;
    }

    private static (int Start, int Length) Longest(double[] logs)
    {
        var (best, length, run) = (0, 0, 0);
        for (var i = 0; i < logs.Length; i++)
        {
            run = double.IsNaN(logs[i]) ? 0 : run + 1;
            // of equal pieces the later one counts
            if (run >= length && run > 0)
            {
                (best, length) = (i - run + 1, run);
            }
        }

        return (best, length);
    }
}
