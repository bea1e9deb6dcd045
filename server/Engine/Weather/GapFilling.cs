namespace FarmPortfolio.Engine.Weather;

/// <summary>
/// Fills gaps of a record: days by a straight line between the neighbours; hours likewise up to <see cref="ShortHours"/>, more by the usual temperature of the hour (that of the days around) plus a straight line
/// between the neighbours' departures from it. At an end of the season the nearest value or departure stands.
/// </summary>
internal static class GapFilling
{
    /// <summary>Longest gap of a daily record that is filled at all.</summary>
    public const int LongestDays = 31;

    /// <summary>Longest gap of an hourly record that a straight line fills; over a longer one it would lose the day's swing.</summary>
    public const int ShortHours = 6;

    /// <summary>Longest gap of an hourly record that is filled at all: five days.</summary>
    public const int LongestHours = 120;

    private const int HalfWindowDays = 10;

    /// <summary>The usual temperature of each hour: the mean of the same hour on the days around it.</summary>
    /// <param name="hourlyC">Hours of a season, C; not finite = missing.</param>
    /// <returns>C; not finite where the days around have nothing either.</returns>
    public static double[] UsualHours(double[] hourlyC)
    {
        var usual = new double[hourlyC.Length];
        for (var h = 0; h < usual.Length; h++)
        {
            var (sum, n) = (0.0, 0);
            for (var d = -HalfWindowDays; d <= HalfWindowDays; d++)
            {
                var at = h + 24 * d;
                if (at >= 0 && at < usual.Length && double.IsFinite(hourlyC[at]))
                {
                    sum += hourlyC[at];
                    n++;
                }
            }

            usual[h] = sum / n;
        }

        return usual;
    }

    /// <summary>Fills in place.</summary>
    /// <param name="values">Values in order; not finite = missing.</param>
    /// <param name="longest">Longest gap filled.</param>
    /// <param name="shortest">Longest gap that the straight line fills where <paramref name="usual"/> is known.</param>
    /// <param name="usual">Usual value of each step; null = not known.</param>
    /// <param name="what">What they are, for the message.</param>
    /// <exception cref="ArgumentException">A gap is too long, or nothing was recorded.</exception>
    public static void Fill(double[] values, int longest, int shortest, double[]? usual, string what)
    {
        for (var i = 0; i < values.Length; i++)
        {
            if (double.IsFinite(values[i]))
            {
                continue;
            }

            var end = i;
            while (end < values.Length && !double.IsFinite(values[end]))
            {
                end++;
            }

            if (end - i > longest || (i == 0 && end == values.Length))
            {
                throw new ArgumentException($"{what} {i + 1} to {end} are missing, more than the {longest} that are filled");
            }

            var normal = end - i > shortest ? usual : null;
            double Departure(int at) => values[at] - (normal?[at] ?? 0);
            var before = i > 0 ? Departure(i - 1) : Departure(end);
            var after = end < values.Length ? Departure(end) : before;
            var from = i;
            for (; i < end; i++)
            {
                values[i] = before + (after - before) * (i - from + 1) / (end - from + 1) + (normal?[i] ?? 0);
            }
        }
    }
}
