namespace FarmPortfolio.Engine.Weather;

/// <summary>The cold that a heater is sized for: outside temperatures that 99 % and 99.6 % of all hours of the record are above (the form of ASHRAE Handbook Fundamentals, climatic design information).</summary>
/// <param name="At99C">Colder in 1 % of the hours, C.</param>
/// <param name="At996C">Colder in 0.4 % of the hours, C.</param>
/// <param name="ColdestC">Coldest hour of the record, C.</param>
/// <param name="Seasons">Seasons read.</param>
public sealed record DesignTemperature(double At99C, double At996C, double ColdestC, int Seasons)
{
    /// <summary>Reads a record.</summary>
    /// <param name="years">Whole seasons of one station.</param>
    /// <returns>Design temperatures.</returns>
    /// <exception cref="ArgumentException">No season.</exception>
    public static DesignTemperature Of(IReadOnlyList<WeatherYear> years)
    {
        if (years.Count == 0)
        {
            throw new ArgumentException("a design temperature needs a season or more", nameof(years));
        }

        var hours = new double[years.Sum(y => y.Hours)];
        var at = 0;
        foreach (var year in years)
        {
            year.TempC.CopyTo(hours, at);
            at += year.Hours;
        }

        Array.Sort(hours);
        return new(hours[(int)(0.01 * hours.Length)], hours[(int)(0.004 * hours.Length)], hours[0], years.Count);
    }
}
