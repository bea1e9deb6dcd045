using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Engine.Weather;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Api;

/// <summary>How a station that is known by monthly normals only is marked wherever it is named, and what that means.</summary>
internal static class NormalsMark
{
    private const string Words = "monthly normals only";

    /// <summary>What is missing, as a line among the gaps of the data.</summary>
    internal const string Gap = "monthly normals only: days within the month are made by rule, real cold spells are not in it, and bills cannot be held against it; wanted is a daily or hourly record";

    /// <summary>A station's name with its mark.</summary>
    internal static string Name(Item<WeatherStationFacts> station) => station.Facts.IsNormalsOnly() ? $"{Plain(station)} ({Words})" : Plain(station);

    /// <summary>A season's name, with a word that it was made.</summary>
    internal static string Season(WeatherYear year) =>
        !year.FromNormals ? SeasonCalendar.Name(year.Season) : year.Season == NormalsYear.StandInSeason ? "of the normals" : $"{SeasonCalendar.Name(year.Season)}, made from normals,";

    /// <summary>What the mark means, in plain sentences; empty for a station with a record.</summary>
    internal static IEnumerable<string> Meaning(StationWinters? station)
    {
        if (station?.DeparturesFrom is not { } others)
        {
            yield break;
        }

        yield return "The station is known by its monthly normals only: no winter of it was recorded.";
        yield return "Days within a month are made by rule from the month's mean (Erbs, Klein and Beckman 1983). The cold spells that a winter really had are not in it, so peak load and the size of a heater are not from a record.";
        yield return others > 0
            ? $"How hard one winter is against another comes from {(others == 1 ? "the one station" : $"the {others} stations")} with a record: what each month was off its own mean over the pool of winters."
            : "No other station has a record of the pool, so one middling winter is made and the spread between winters is missing: no hard and no mild winter is in the futures, only the offset of the assumptions.";
        yield return "Tickets, bills and trials go by exact days, so none of them can be held against it.";
    }

    private static string Plain(Item<WeatherStationFacts> station) => station.Remarks.Name ?? "unnamed";
}
