using FarmPortfolio.Engine.Fuel;

namespace FarmPortfolio.Published;

/// <summary>How a way of forecasting did on a record: forecasts from the first T months alone, T = 120, 123, 126 ..., at horizons of 12, 24, 36, 48 and 60 months.</summary>
/// <param name="Ninety">Outcomes inside P5 to P95, by horizon.</param>
/// <param name="Fifty">Outcomes inside P25 to P75, by horizon.</param>
/// <param name="Forecasts">Forecasts, by horizon.</param>
/// <param name="Pinball">Mean over the levels .05, .10 to .95 of 2 max(q d, (q-1) d), d = ln outcome - ln quantile, mean of the horizons.</param>
internal sealed record BackTestScore(int[] Ninety, int[] Fifty, int[] Forecasts, double Pinball)
{
    private static readonly double[] Levels = [.. Enumerable.Range(1, 19).Select(i => 0.05 * i)];

    /// <summary>Per cent inside P5 to P95, mean of the horizons.</summary>
    public double NinetyPct => Ninety.Zip(Forecasts, (k, n) => 100.0 * k / n).Average();

    /// <summary>Per cent inside P25 to P75, mean of the horizons.</summary>
    public double FiftyPct => Fifty.Zip(Forecasts, (k, n) => 100.0 * k / n).Average();

    /// <summary>Scores a way of forecasting.</summary>
    /// <param name="code">Record that ships.</param>
    /// <param name="forecast">Given the first months: quantiles of the log price so many months after the last, by level.</param>
    /// <param name="lastMonths">How many of the first months the forecaster is shown, the latest; all where there are fewer.</param>
    /// <returns>The score.</returns>
    public static BackTestScore Of(string code, Func<PriceRecord, Func<int, double, double>> forecast, int lastMonths = int.MaxValue)
    {
        var record = ShippedRecords.Of(code);
        var x = record.LogPrices;
        var (ninety, fifty, count, sums) = (new int[5], new int[5], new int[5], new double[5]);
        for (var t = PriceBackTest.FirstMonths; t <= x.Length - 12; t += 3)
        {
            var from = Math.Max(0, t - lastMonths);
            var quantile = forecast(new(record.FirstMonthOn.AddMonths(from), x[from..t], 0, 0));
            for (var h = 0; h < 5 && t - 1 + 12 * (h + 1) <= x.Length - 1; h++)
            {
                var (months, outcome) = (12 * (h + 1), x[t - 1 + 12 * (h + 1)]);
                ninety[h] += outcome >= quantile(months, .05) && outcome <= quantile(months, .95) ? 1 : 0;
                fifty[h] += outcome >= quantile(months, .25) && outcome <= quantile(months, .75) ? 1 : 0;
                sums[h] += Levels.Average(q => outcome - quantile(months, q) is var d ? 2 * Math.Max(q * d, (q - 1) * d) : 0);
                count[h]++;
            }
        }

        return new(ninety, fifty, count, sums.Zip(count, (s, n) => s / n).Average());
    }

    /// <summary>The program's model as it is fitted to the months shown; its bands mixed over the unrest, or those of a plain normal.</summary>
    public static Func<int, double, double> Model(PriceRecord part, PriceModel model, bool mixed = true) => (months, level) =>
        model.Median(months / 12.0) + model.Shape[(part.LastMonthOn.Month - 1 + months) % 12] + Math.Sqrt(model.ForecastVariance(months / 12.0)) * (mixed ? MixedQuantile(level) : Normal(level));

    /// <summary>No drift, normal, the monthly spread of the raw changes about zero times the root of the months.</summary>
    public static Func<int, double, double> Walk(PriceRecord part, double growthPerYear = 0)
    {
        var x = part.LogPrices;
        var sd = Math.Sqrt(Enumerable.Range(1, x.Length - 1).Average(i => Math.Pow(x[i] - x[i - 1], 2)));
        return (months, level) => x[^1] + growthPerYear * months / 12 + sd * Math.Sqrt(months) * Normal(level);
    }

    /// <summary>Quantiles (type 7) of the changes over so many months within the last ten years.</summary>
    public static Func<int, double, double> Empirical(PriceRecord part)
    {
        var x = part.LogPrices;
        var last = x[Math.Max(0, x.Length - 121)..];
        return (months, level) =>
        {
            var sorted = Enumerable.Range(0, last.Length - months).Select(i => last[i + months] - last[i]).Order().ToArray();
            var at = level * (sorted.Length - 1);
            var low = Math.Min((int)at, sorted.Length - 2);
            return x[^1] + sorted[low] + (at - low) * (sorted[low + 1] - sorted[low]);
        };
    }

    /// <summary>Quantile of a normal whose spread is 0.7, 1 or 1.5 with probability 1/4, 1/2, 1/4, by halving; kept, since nineteen are asked for again and again.</summary>
    public static double MixedQuantile(double level) => Kept.GetOrAdd(level, q =>
    {
        var (low, high) = (-8.0, 8.0);
        for (var i = 0; i < 60; i++)
        {
            var z = (low + high) / 2;
            (low, high) = 0.25 * Below(z / 0.7) + 0.5 * Below(z) + 0.25 * Below(z / 1.5) < q ? (z, high) : (low, z);
        }

        return (low + high) / 2;
    });

    private static readonly System.Collections.Concurrent.ConcurrentDictionary<double, double> Kept = new();

    private static double Normal(double level) => MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, level);

    private static double Below(double z) => MathNet.Numerics.Distributions.Normal.CDF(0, 1, z);
}
