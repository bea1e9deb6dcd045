using static System.Math;

namespace FarmPortfolio.Engine.Fuel;

/// <summary>Fits the price model to a monthly record: shape, volatility from three-month changes shrunk to the class, filtered level. Nothing else is fitted.</summary>
public static class PriceFit
{
    private const double Month = 1.0 / 12;
    private const double PriorYears = 5;
    private const double ShapeShrinkMonths = 60;

    /// <summary>Fits a prepared record.</summary>
    /// <param name="record">The record.</param>
    /// <param name="priceClass">Its class.</param>
    /// <param name="own">The user's own parameters; null = defaults and fit.</param>
    /// <param name="shrinkShape">Whether a short record's shape is shrunk towards none.</param>
    /// <returns>The fitted model.</returns>
    public static PriceModel Of(PriceRecord record, PriceClass priceClass, FuelPriceAssumption? own = null, bool shrinkShape = true)
    {
        var d = PriceClassDefaults.Of(priceClass);
        var k1 = own?.ShortReversionPerYear ?? d.ShortReversionPerYear;
        var k2 = own?.LongReversionPerYear ?? d.LongReversionPerYear;
        var share = k1 > 0 ? own?.LongShare ?? d.LongShare : 1;
        var growth = own?.GrowthPerYear ?? d.GrowthPerYear;
        var x = record.LogPrices;
        var shape = Shape(x, record.FirstMonthOn.Month, shrinkShape);
        var plain = Plain(record, shape);
        var (raw, shrunk, weight) = Volatility(plain, d.PriorVolatility);
        var volatility = own?.VolatilityPerYear ?? shrunk;
        var sx = share * volatility;
        var sc = k1 > 0 ? Sqrt((1 - share * share) * volatility * volatility / ThreeMonthShare(k1)) : 0;
        var (level, variance, _) = Filter(plain, k1, sx, sc, growth);
        return new()
        {
            ShortReversion = k1,
            LongReversion = k2,
            LongVolatility = sx,
            ShortVolatility = sc,
            Growth = growth,
            Level = level,
            Gap = plain[^1] - level,
            LevelVariance = variance,
            Shape = shape,
            RawVolatility = raw,
            Volatility = volatility,
            PriorWeight = weight,
            Months = x.Length,
            LastMonthOn = record.LastMonthOn,
        };
    }

    /// <summary>B = 4 (1 - exp(-k1/4)) / k1: share of a short-term factor's yearly variance that three-month changes see.</summary>
    internal static double ThreeMonthShare(double shortReversion) => 4 * (1 - Exp(-shortReversion / 4)) / shortReversion;

    /// <summary>The record's logs without their seasonal shape.</summary>
    internal static double[] Plain(PriceRecord record, double[] shape) => [.. record.LogPrices.Select((x, t) => x - shape[(record.FirstMonthOn.Month - 1 + t) % 12])];

    /// <summary>Mean deviation from the centred 2 x 12 moving average by calendar month, summing to zero.</summary>
    internal static double[] Shape(double[] logs, int firstMonth, bool shrink)
    {
        var (sums, counts) = (new double[12], new int[12]);
        for (var t = 6; t < logs.Length - 6; t++)
        {
            var average = (logs[t - 6] + logs[t + 6]) / 24;
            for (var i = -5; i <= 5; i++)
            {
                average += logs[t + i] / 12;
            }

            var month = (firstMonth - 1 + t) % 12;
            sums[month] += logs[t] - average;
            counts[month]++;
        }

        var shape = new double[12];
        if (counts.Min() == 0)
        {
            return shape;
        }

        var mean = 0.0;
        for (var m = 0; m < 12; m++)
        {
            shape[m] = sums[m] / counts[m];
            mean += shape[m] / 12;
        }

        var weight = shrink ? logs.Length / (logs.Length + ShapeShrinkMonths) : 1;
        for (var m = 0; m < 12; m++)
        {
            shape[m] = weight * (shape[m] - mean);
        }

        return shape;
    }

    /// <summary>V3 = 4 mean (x(t+3) - x(t))^2; ss^2 = (N V3 + 5 prior^2) / (N + 5), kept within 0.5 to 2 times the prior.</summary>
    private static (double Raw, double Shrunk, double PriorWeight) Volatility(double[] x, double prior)
    {
        if (x.Length < PriceRecord.FewestMonths)
        {
            return (double.NaN, prior, 1);
        }

        var sum = 0.0;
        for (var t = 0; t + 3 < x.Length; t++)
        {
            sum += (x[t + 3] - x[t]) * (x[t + 3] - x[t]);
        }

        var v3 = 4 * sum / (x.Length - 3);
        var years = x.Length / 12.0;
        var shrunk = Sqrt((years * v3 + PriorYears * prior * prior) / (years + PriorYears));
        return (Sqrt(v3), Clamp(shrunk, prior / 2, prior * 2), PriorYears / (years + PriorYears));
    }

    /// <summary>Scalar Kalman filter of the long-term level, the price being observed exactly, with the log likelihood of its surprises less a constant.</summary>
    internal static (double Level, double Variance, double LogLikelihood) Filter(double[] x, double k1, double sx, double sc, double mu)
    {
        if (!(sc > 0))
        {
            return (x[^1], 0, double.NaN);
        }

        var f = Exp(-k1 * Month);
        var a = 1 - f;
        var q = sx * sx * Month;
        var r = sc * sc * (1 - f * f) / (2 * k1);
        var (m, p, likelihood) = (x[0], sc * sc / (2 * k1), 0.0);
        for (var t = 1; t < x.Length; t++)
        {
            var u = a * p + q;
            var spread = a * a * p + q + r;
            var e = x[t] - f * x[t - 1] - a * m - mu * Month;
            m += mu * Month + u * e / spread;
            p += q - u * u / spread;
            likelihood -= (Log(spread) + e * e / spread) / 2;
        }

        return (m, p, likelihood);
    }
}
