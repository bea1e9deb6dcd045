namespace FarmPortfolio.Engine.Fuel;

/// <summary>Forecasts of a record from its own first months, held against what came.</summary>
/// <param name="Years">How far ahead.</param>
/// <param name="Forecasts">How many were made; neighbours overlap.</param>
/// <param name="InsideNinety">How many outcomes fell inside P5 to P95.</param>
/// <param name="InsideFifty">How many fell inside P25 to P75.</param>
public sealed record BackTestCount(int Years, int Forecasts, int InsideNinety, int InsideFifty);

/// <summary>
/// Back-test: forecasts with the first 120, 123, 126 ... months at horizons of one to five years, everything fitted on what was known by then.
/// </summary>
public static class PriceBackTest
{
    /// <summary>Months of the first forecast.</summary>
    public const int FirstMonths = 120;

    private const int EveryMonths = 3;

    /// <summary>Runs the test.</summary>
    /// <param name="record">Record.</param>
    /// <param name="priceClass">Class.</param>
    /// <param name="shrinkShape">Whether a short record's shape is shrunk towards none.</param>
    /// <returns>Counts by horizon; empty where the record is shorter than eleven years.</returns>
    public static IReadOnlyList<BackTestCount> Of(PriceRecord record, PriceClass priceClass, bool shrinkShape = true)
    {
        var x = record.LogPrices;
        var (ninety, fifty, count) = (new int[5], new int[5], new int[5]);
        for (var t = FirstMonths; t <= x.Length - 12; t += EveryMonths)
        {
            var model = PriceFit.Of(new(record.FirstMonthOn, x[..t], 0, 0), priceClass, shrinkShape: shrinkShape);
            for (var h = 0; h < 5 && t - 1 + 12 * (h + 1) <= x.Length - 1; h++)
            {
                var at = t - 1 + 12 * (h + 1);
                var away = Math.Abs(x[at] - model.Median(h + 1) - model.Shape[(record.FirstMonthOn.Month - 1 + at) % 12]);
                var sd = Math.Sqrt(model.ForecastVariance(h + 1));
                ninety[h] += away <= PriceModel.P95 * sd ? 1 : 0;
                fifty[h] += away <= PriceModel.P75 * sd ? 1 : 0;
                count[h]++;
            }
        }

        return [.. Enumerable.Range(0, 5).Where(h => count[h] > 0).Select(h => new BackTestCount(h + 1, count[h], ninety[h], fifty[h]))];
    }
}
