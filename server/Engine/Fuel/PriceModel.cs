using static System.Math;

namespace FarmPortfolio.Engine.Fuel;

/// <summary>
/// A fitted price: ln P = ln L + s(month) - k + xi + chi. Schwartz (1997); Schwartz and Smith (2000), both from memory. Years, natural logs.
/// </summary>
public sealed record PriceModel
{
    /// <summary>Unrest of a path: calm, usual, turbulent, with probability 1/4, 1/2, 1/4.</summary>
    internal static readonly double[] Unrest = [0.7, 1, 1.5];

    /// <summary>P95 of a normal mixed over the unrest, in standard deviations.</summary>
    public const double P95 = 1.774523;

    /// <summary>P90 of a normal mixed over the unrest, in standard deviations.</summary>
    public const double P90 = 1.329774;

    /// <summary>P75 of a normal mixed over the unrest, in standard deviations.</summary>
    public const double P75 = 0.669728;

    /// <summary>k1, a year; 0 = no short-term factor.</summary>
    public required double ShortReversion { get; init; }

    /// <summary>k2, a year.</summary>
    public required double LongReversion { get; init; }

    /// <summary>sx, a year^-1/2.</summary>
    public required double LongVolatility { get; init; }

    /// <summary>sc, a year^-1/2.</summary>
    public required double ShortVolatility { get; init; }

    /// <summary>mu, a year.</summary>
    public required double Growth { get; init; }

    /// <summary>m: log of the filtered long-term level at the last month of the record.</summary>
    public required double Level { get; init; }

    /// <summary>chi(0): filtered gap of the last month from the level.</summary>
    public required double Gap { get; init; }

    /// <summary>P: variance of the filtered level.</summary>
    public required double LevelVariance { get; init; }

    /// <summary>s by calendar month, January first, sums to 0.</summary>
    public required double[] Shape { get; init; }

    /// <summary>ss as the record alone gives it; NaN where there was too little.</summary>
    public required double RawVolatility { get; init; }

    /// <summary>ss after shrinking.</summary>
    public required double Volatility { get; init; }

    /// <summary>Weight of the prior in ss^2, 0 to 1.</summary>
    public required double PriorWeight { get; init; }

    /// <summary>Months of the record used.</summary>
    public required int Months { get; init; }

    /// <summary>Last month of the record.</summary>
    public required DateOnly LastMonthOn { get; init; }

    /// <summary>Variance of the log price after y years: v(y).</summary>
    /// <param name="years">Years from the last month.</param>
    /// <returns>Variance before the unrest.</returns>
    public double Variance(double years) => LongVolatility * LongVolatility * Span(2 * LongReversion, years) + ShortVolatility * ShortVolatility * Span(2 * ShortReversion, years);

    /// <summary>Log of mean over median for a variance: k.</summary>
    /// <param name="variance">v.</param>
    /// <returns>k.</returns>
    public static double MeanOverMedian(double variance) => Log(Exp(0.49 * variance / 2) / 4 + Exp(variance / 2) / 2 + Exp(2.25 * variance / 2) / 4);

    /// <summary>Median of the log price after y years, without shape.</summary>
    /// <param name="years">Years from the last month.</param>
    /// <returns>Log price.</returns>
    public double Median(double years) => Level + Growth * years + Gap * Exp(-ShortReversion * years);

    /// <summary>Variance of a forecast, the level's own uncertainty included.</summary>
    /// <param name="years">Years from the last month.</param>
    /// <returns>Variance before the unrest.</returns>
    public double ForecastVariance(double years)
    {
        var away = 1 - Exp(-ShortReversion * years);
        return LevelVariance * away * away + Variance(years);
    }

    private static double Span(double twiceReversion, double years) => twiceReversion > 0 ? (1 - Exp(-twiceReversion * years)) / twiceReversion : years;
}
