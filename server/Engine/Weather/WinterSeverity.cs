using static System.Math;

namespace FarmPortfolio.Engine.Weather;

/// <summary>How hard one season was.</summary>
/// <param name="Season">Year of its July.</param>
/// <param name="DegreeDaysK">Degree days below the base.</param>
/// <param name="AgainstMiddle">Share above (or below, negative) the middle season of the record.</param>
/// <param name="ColdestC">Coldest hour, C.</param>
public sealed record SeasonSeverity(int Season, double DegreeDaysK, double AgainstMiddle, double ColdestC);

/// <summary>Seasons that stand for mild, middling and hard.</summary>
/// <param name="Mild">The season nearest to the one in ten mildest.</param>
/// <param name="Middle">The season nearest to the middle.</param>
/// <param name="Hard">The season nearest to the one in ten hardest.</param>
public sealed record ReferenceSeasons(int Mild, int Middle, int Hard);

/// <summary>The seasons of a station against each other.</summary>
/// <param name="BaseC">Base of the degree days, C.</param>
/// <param name="Seasons">Severity, oldest first.</param>
/// <param name="MeanK">Mean degree days.</param>
/// <param name="Variation">Standard deviation over mean.</param>
/// <param name="NextYearCorrelation">Correlation of a season with the next: near 0, winters may be drawn independently.</param>
/// <param name="Reference">Reference seasons.</param>
public sealed record WinterSeverity(double BaseC, IReadOnlyList<SeasonSeverity> Seasons, double MeanK, double Variation, double NextYearCorrelation, ReferenceSeasons Reference)
{
    /// <summary>Severity of a station's seasons.</summary>
    /// <param name="years">Seasons, three or more; order does not matter.</param>
    /// <param name="baseC">Base of the degree days, C.</param>
    /// <returns>The severity.</returns>
    /// <exception cref="ArgumentException">Fewer than three seasons.</exception>
    public static WinterSeverity Of(IReadOnlyList<WeatherYear> years, double baseC)
    {
        if (years.Count < 3)
        {
            throw new ArgumentException($"severity needs three seasons or more, not {years.Count}", nameof(years));
        }

        var ordered = years.OrderBy(y => y.Season).ToArray();
        var days = ordered.Select(y => y.DegreeDaysK(baseC)).ToArray();
        var sorted = days.Order().ToArray();
        double Quantile(double p)
        {
            var at = p * (sorted.Length - 1);
            var low = (int)at;
            return sorted[low] + (at - low) * (sorted[Min(low + 1, sorted.Length - 1)] - sorted[low]);
        }

        var (mean, middle) = (days.Average(), Quantile(0.5));
        var square = days.Sum(d => (d - mean) * (d - mean));
        var next = Enumerable.Range(0, days.Length - 1).Sum(i => (days[i] - mean) * (days[i + 1] - mean));
        int Nearest(double wanted) => ordered[Enumerable.Range(0, days.Length).MinBy(i => Abs(days[i] - wanted))].Season;
        return new(
            baseC, [.. ordered.Select((y, i) => new SeasonSeverity(y.Season, days[i], middle > 0 ? days[i] / middle - 1 : 0, y.TempC.Min()))], mean,
            mean > 0 ? Sqrt(square / (days.Length - 1)) / mean : 0, square > 0 ? next / square : 0, new(Nearest(Quantile(0.1)), Nearest(middle), Nearest(Quantile(0.9))));
    }
}
