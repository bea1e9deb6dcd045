using static System.Math;

namespace FarmPortfolio.Engine.Weather;

/// <summary>Mean Tmin and Tmax by day of the year over a station's record, smoothed over fifteen days: what a longer gap is filled from.</summary>
public sealed class StationClimate
{
    private const int HalfWindow = 7;
    private const int Days = 366;

    private readonly double[] minMaxC = new double[2 * Days];

    private StationClimate()
    {
    }

    /// <summary>The climate of a record.</summary>
    /// <param name="seasons">Recorded seasons: year of the July, Tmin and Tmax of each day in turn, C, NaN = missing.</param>
    /// <returns>The climate; null where a stretch of the year has no value at all.</returns>
    public static StationClimate? Of(IEnumerable<(int Season, double[] MinMaxC)> seasons)
    {
        var (sum, count) = (new double[2 * Days], new int[2 * Days]);
        foreach (var (season, values) in seasons)
        {
            for (var i = 0; i < values.Length; i++)
            {
                if (double.IsFinite(values[i]))
                {
                    var at = 2 * DayOfLeapYear(SeasonCalendar.FirstDay(season).AddDays(i / 2)) + i % 2;
                    sum[at] += values[i];
                    count[at]++;
                }
            }
        }

        var climate = new StationClimate();
        for (var i = 0; i < 2 * Days; i++)
        {
            var (total, n) = (0.0, 0);
            for (var d = -HalfWindow; d <= HalfWindow; d++)
            {
                var at = ((i / 2 + d + Days) % Days) * 2 + i % 2;
                total += sum[at];
                n += count[at];
            }

            if (n == 0)
            {
                return null;
            }

            climate.minMaxC[i] = total / n;
        }

        return climate;
    }

    /// <summary>Usual Tmin or Tmax of a day.</summary>
    /// <param name="day">The day.</param>
    /// <param name="column">0 = Tmin, 1 = Tmax.</param>
    /// <returns>C.</returns>
    public double At(DateOnly day, int column) => minMaxC[2 * DayOfLeapYear(day) + column];

    private static int DayOfLeapYear(DateOnly day) => new DateOnly(2000, day.Month, day.Day).DayOfYear - 1;
}
