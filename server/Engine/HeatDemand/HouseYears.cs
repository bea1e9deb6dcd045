using FarmPortfolio.Engine.Farms;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>Years in which coverings and heaters were put in.</summary>
public static class HouseYears
{
    /// <summary>First year believed; older coverings and heaters stand in no house in use (common practice, no source).</summary>
    public const int Earliest = 1950;

    /// <summary>A year that cannot be.</summary>
    /// <param name="field">Field that holds it.</param>
    /// <param name="what">Plain name of what was put in.</param>
    /// <param name="year">Year told.</param>
    /// <param name="firstSeason">Year of the July of the study's first season.</param>
    /// <returns>The fault; null = the year can be.</returns>
    public static Fault? Of(string field, string what, int year, int firstSeason) => year >= Earliest && year <= firstSeason + 1
        ? null
        : new("OUT_OF_RANGE", field, FormattableString.Invariant($"The {what} of the year {year} cannot be."), FormattableString.Invariant($"Give a year from {Earliest} to {firstSeason + 1}, or leave it empty where it is not known."));

    /// <summary>Years of a house that cannot be.</summary>
    /// <param name="house">The house.</param>
    /// <param name="firstSeason">Year of the July of the study's first season.</param>
    /// <returns>Faults; empty = all can be.</returns>
    public static IEnumerable<Fault> Of(HouseFacts house, int firstSeason) =>
        house.Surfaces.Select(s => (Field: "surfaces", What: "covering", On: s.InstalledOn))
            .Concat(house.Heaters.Select(h => (Field: "heaters", What: "heater", On: h.InstalledOn)))
            .Select(x => x.On is { } on ? Of(x.Field, x.What, on.Year, firstSeason) : null)
            .OfType<Fault>();
}
