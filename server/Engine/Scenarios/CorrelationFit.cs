using FarmPortfolio.Engine.Fuel;

namespace FarmPortfolio.Engine.Scenarios;

/// <summary>Correlations that price records say, shrunk to the defaults: three-month changes for the short-term factor, twelve-month changes for the long-term one.</summary>
/// <param name="ShortTerm">Short-term, order gas, propane, oil, electricity, row by row.</param>
/// <param name="LongTerm">Long-term, same order.</param>
/// <param name="Months">Months that two records share, row by row; 0 = none.</param>
public sealed record CorrelationFit(IReadOnlyList<double> ShortTerm, IReadOnlyList<double> LongTerm, IReadOnlyList<int> Months)
{
    private const int ShortMonths = 3;
    private const int LongMonths = 12;

    /// <summary>Independent changes at which record and default weigh the same; ASSUMED with the default model.</summary>
    private const double DefaultWeight = 20;

    /// <summary>Fits records.</summary>
    /// <param name="records">Record by fuel; a fuel that is missing keeps the defaults.</param>
    /// <returns>Correlations that four prices can have together.</returns>
    public static CorrelationFit Of(IReadOnlyDictionary<FuelKind, PriceRecord> records)
    {
        var plain = records.ToDictionary(r => r.Key, r => PriceFit.Plain(r.Value, PriceFit.Shape(r.Value.LogPrices, r.Value.FirstMonthOn.Month, shrink: true)));
        var (shortly, longly, months) = (Correlation.ShortDefault.ToArray(), Correlation.LongDefault.ToArray(), new int[Correlation.Fuels * Correlation.Fuels]);
        for (var i = 0; i < Correlation.Fuels; i++)
        {
            for (var j = 0; j < i; j++)
            {
                if (!records.TryGetValue((FuelKind)i, out var a) || !records.TryGetValue((FuelKind)j, out var b))
                {
                    continue;
                }

                var (at, mirrored) = (i * Correlation.Fuels + j, j * Correlation.Fuels + i);
                var (x, y) = Shared(a, plain[(FuelKind)i], b, plain[(FuelKind)j]);
                months[at] = months[mirrored] = x.Length;
                shortly[at] = shortly[mirrored] = Shrunk(x, y, ShortMonths, shortly[at]);
                longly[at] = longly[mirrored] = Shrunk(x, y, LongMonths, longly[at]);
            }
        }

        return new(Correlation.Nearest(shortly).Nearest, Correlation.Nearest(longly).Nearest, months);
    }

    /// <summary>Correlation of the changes that two rows share, drift removed.</summary>
    internal static double Of(IReadOnlyList<double> x, IReadOnlyList<double> y, int step)
    {
        var (dx, dy) = (Changes.Over(x, step), Changes.Over(y, step));
        var (mx, my) = (dx.Average(), dy.Average());
        var (xx, yy, xy) = (0.0, 0.0, 0.0);
        for (var t = 0; t < dx.Length; t++)
        {
            xx += (dx[t] - mx) * (dx[t] - mx);
            yy += (dy[t] - my) * (dy[t] - my);
            xy += (dx[t] - mx) * (dy[t] - my);
        }

        return xx > 0 && yy > 0 ? xy / Math.Sqrt(xx * yy) : 0;
    }

    private static double Shrunk(double[] x, double[] y, int step, double usual)
    {
        if (x.Length < PriceRecord.FewestMonths)
        {
            return usual;
        }

        var independent = (double)x.Length / step;
        return (independent * Of(x, y, step) + DefaultWeight * usual) / (independent + DefaultWeight);
    }

    private static (double[] X, double[] Y) Shared(PriceRecord a, double[] x, PriceRecord b, double[] y)
    {
        var first = a.FirstMonthOn > b.FirstMonthOn ? a.FirstMonthOn : b.FirstMonthOn;
        var last = a.LastMonthOn < b.LastMonthOn ? a.LastMonthOn : b.LastMonthOn;
        var n = Math.Max(0, 12 * (last.Year - first.Year) + last.Month - first.Month + 1);
        int From(PriceRecord r) => 12 * (first.Year - r.FirstMonthOn.Year) + first.Month - r.FirstMonthOn.Month;
        return n == 0 ? ([], []) : (x[From(a)..(From(a) + n)], y[From(b)..(From(b) + n)]);
    }
}
