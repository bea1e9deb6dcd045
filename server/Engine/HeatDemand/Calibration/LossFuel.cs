using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.HeatDemand.Calibration;

/// <summary>Fuel that goes out through films and through leaks in the hours that heat is wanted, day by day: what the fuel burned gains when either grows.</summary>
/// <param name="houses">Houses behind a tank or meter.</param>
/// <param name="winters">Weather by season year.</param>
internal sealed class LossFuel(IReadOnlyList<BehindTank> houses, IReadOnlyDictionary<int, WeatherYear> winters)
{
    private readonly Dictionary<int, (double[] Film, double[] Air)> bySeason = [];

    /// <summary>Over whole days whose weather is on record, kWh of fuel.</summary>
    /// <param name="from">First day.</param>
    /// <param name="to">Last day.</param>
    /// <returns>Through roof, sides and ends; through leaks.</returns>
    public (double Film, double Air) Of(DateOnly from, DateOnly to)
    {
        var (film, air) = (0.0, 0.0);
        for (var day = from; day <= to; day = day.AddDays(1))
        {
            var (season, d) = (Season(SeasonCalendar.SeasonOf(day)), SeasonCalendar.DayIndex(day));
            film += season.Film[d];
            air += season.Air[d];
        }

        return (film, air);
    }

    private (double[] Film, double[] Air) Season(int season)
    {
        if (!bySeason.TryGetValue(season, out var known))
        {
            var year = winters[season];
            bySeason[season] = known = (new double[SeasonCalendar.Days(season)], new double[SeasonCalendar.Days(season)]);
            foreach (var house in houses)
            {
                Add(house, year, known.Film, known.Air);
            }
        }

        return known;
    }

    private static void Add(BehindTank house, WeatherYear year, double[] film, double[] air)
    {
        var option = OptionModels.AsItStands(house.Model);
        var rows = option.ConductanceWPerK;
        var season = SeasonHours.Of(year);
        var hours = new HourState(option, season);
        var periodOf = RunningChanges.PeriodOfDay(option.Periods, year.Season);
        var perWh = house.Share / house.Model.Heaters[house.HeaterNo].Efficiency / 1000;
        for (var h = 0; h < 24 * periodOf.Length; h++)
        {
            if (periodOf[h / 24] < 0)
            {
                hours.Reset();
                continue;
            }

            hours.Step(option.Periods[periodOf[h / 24]], season, h, 0);
            if (hours.DemandW <= 0 || hours.WantedW > hours.DemandW)
            {
                continue;
            }

            for (var state = 0; state < 4; state++)
            {
                var k = perWh * hours.StateK(state);
                film[h / 24] += k * (rows[state][(int)HeatPath.Roof] + rows[state][(int)HeatPath.Sides] + rows[state][(int)HeatPath.Ends]);
                air[h / 24] += k * rows[state][(int)HeatPath.Air];
            }
        }
    }
}
