namespace FarmPortfolio.Engine.Weather;

/// <summary>How much of a season was recorded, and how its gaps are filled.</summary>
/// <param name="Steps">Days of a daily record, hours of an hourly one.</param>
/// <param name="Missing">Steps with no value (a day that lacks Tmin or Tmax counts as missing).</param>
/// <param name="LongestGap">Longest run of missing steps.</param>
/// <param name="FilledByLine">Steps filled by a straight line between the neighbours.</param>
/// <param name="FilledByUsualHour">Hours filled by the usual temperature of the hour plus a straight line between the neighbours' departures from it; 0 in a daily record.</param>
/// <param name="Usable">Whether the longest gap is short enough to fill.</param>
public sealed record SeasonCoverage(int Steps, int Missing, int LongestGap, int FilledByLine, int FilledByUsualHour, bool Usable)
{
    /// <summary>Share recorded, 0 to 1.</summary>
    public double Share => Steps == 0 ? 0 : 1 - (double)Missing / Steps;

    /// <summary>Coverage of a daily record.</summary>
    /// <param name="minMaxC">Tmin and Tmax of each day in turn, C; NaN = missing.</param>
    /// <returns>The coverage.</returns>
    public static SeasonCoverage OfDaily(ReadOnlySpan<double> minMaxC)
    {
        var missing = new bool[minMaxC.Length / 2];
        for (var d = 0; d < missing.Length; d++)
        {
            missing[d] = !double.IsFinite(minMaxC[2 * d]) || !double.IsFinite(minMaxC[2 * d + 1]);
        }

        return Of(missing, int.MaxValue, GapFilling.LongestDays);
    }

    /// <summary>Coverage of an hourly record.</summary>
    /// <param name="hourlyC">Temperature of each hour, C; NaN = missing.</param>
    /// <returns>The coverage.</returns>
    public static SeasonCoverage OfHourly(ReadOnlySpan<double> hourlyC)
    {
        var missing = new bool[hourlyC.Length];
        for (var h = 0; h < missing.Length; h++)
        {
            missing[h] = !double.IsFinite(hourlyC[h]);
        }

        return Of(missing, GapFilling.ShortHours, GapFilling.LongestHours);
    }

    private static SeasonCoverage Of(bool[] missing, int byLine, int longest)
    {
        var (all, most, line, usual, run) = (0, 0, 0, 0, 0);
        for (var i = 0; i <= missing.Length; i++)
        {
            if (i < missing.Length && missing[i])
            {
                run++;
                continue;
            }

            all += run;
            most = Math.Max(most, run);
            line += run > byLine ? 0 : run;
            usual += run > byLine ? run : 0;
            run = 0;
        }

        return new(missing.Length, all, most, line, usual, most <= longest && most < missing.Length);
    }
}
