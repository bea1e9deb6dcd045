using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.HeatDemand.Calibration;

/// <summary>A house behind a tank or meter.</summary>
/// <param name="Id">House.</param>
/// <param name="Model">Its model.</param>
/// <param name="HeaterNo">Heater that the tank or meter feeds.</param>
/// <param name="Share">Share of the house's heat from it, 0 to 1.</param>
public sealed record BehindTank(string Id, HouseModel Model, int HeaterNo = 0, double Share = 1)
{
    /// <summary>The houses behind a tank or meter that can be reckoned.</summary>
    /// <param name="groupId">Tank or meter.</param>
    /// <param name="houses">Houses by identifier.</param>
    /// <param name="model">Model of a house; null = it cannot be reckoned.</param>
    /// <returns>Houses in order of their ids.</returns>
    public static IReadOnlyList<BehindTank> Of(string groupId, IEnumerable<KeyValuePair<string, HouseFacts>> houses, Func<string, HouseFacts, HouseModel?> model) =>
    [
        .. from house in houses.Where(h => h.Value.Supplies.Any(s => s.SupplyGroupId == groupId)).OrderBy(h => h.Key, StringComparer.Ordinal)
           let supply = house.Value.Supplies.First(s => s.SupplyGroupId == groupId)
           let known = model(house.Key, house.Value)
           where known is not null && supply.HeaterNo >= 0 && supply.HeaterNo < known.Heaters.Count
           select new BehindTank(house.Key, known, supply.HeaterNo, supply.Share),
    ];
}

/// <summary>Fuel that the houses behind a tank or meter need as described, day by day.</summary>
internal sealed class ModelledFuel(IReadOnlyList<BehindTank> houses, IReadOnlyDictionary<int, WeatherYear> winters)
{
    private readonly Dictionary<int, double[]?> bySeason = [];

    /// <summary>Winters by season year.</summary>
    public IReadOnlyDictionary<int, WeatherYear> Winters { get; } = winters;

    /// <summary>Fuel of a season by day, kWh; null where its weather is not on record.</summary>
    public double[]? Season(int season)
    {
        if (!bySeason.TryGetValue(season, out var days))
        {
            bySeason[season] = days = Winters.TryGetValue(season, out var year) ? Days(houses, year) : null;
        }

        return days;
    }

    /// <summary>Fuel over whole days, kWh; null where the weather of a day is not on record.</summary>
    public double? Of(DateOnly from, DateOnly to)
    {
        var sum = 0.0;
        for (var day = from; day <= to; day = day.AddDays(1))
        {
            if (Season(SeasonCalendar.SeasonOf(day)) is not { } season)
            {
                return null;
            }

            sum += season[SeasonCalendar.DayIndex(day)];
        }

        return sum;
    }

    /// <summary>Days on which the houses want heat, at least 1; the weather must be on record.</summary>
    public int HeatedDays(DateOnly from, DateOnly to) =>
        Math.Max(1, Enumerable.Range(0, to.DayNumber - from.DayNumber + 1).Select(from.AddDays).Count(d => Season(SeasonCalendar.SeasonOf(d))![SeasonCalendar.DayIndex(d)] > 0));

    private static double[] Days(IReadOnlyList<BehindTank> houses, WeatherYear year)
    {
        var sum = new double[SeasonCalendar.Days(year.Season)];
        foreach (var house in houses)
        {
            var heat = DailyHeat.Of(OptionModels.AsItStands(house.Model), year);
            var perKwh = house.Share / house.Model.Heaters[house.HeaterNo].Efficiency;
            for (var d = 0; d < sum.Length; d++)
            {
                sum[d] += perKwh * heat[d];
            }
        }

        return sum;
    }
}
