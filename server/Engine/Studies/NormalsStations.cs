using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.Studies;

/// <summary>Gives the stations that are known by monthly normals only their winters, from the stations beside them that have a record.</summary>
public static class NormalsStations
{
    /// <summary>All stations, those of normals with made winters: one for each season of the pool; or a single one without spread where no station has a record of the pool.</summary>
    /// <param name="stations">Stations by identifier, those of normals without winters.</param>
    /// <param name="told">Seasons of the pool that the assumptions name; empty = as the records have them.</param>
    /// <returns>By identifier; the very same where there is no station of normals.</returns>
    public static IReadOnlyDictionary<string, StationWinters> Laid(IReadOnlyDictionary<string, StationWinters> stations, IReadOnlyList<int> told)
    {
        if (!stations.Values.Any(s => s.Facts.IsNormalsOnly()))
        {
            return stations;
        }

        var pool = WinterPool.Of(stations.Values, told);
        var recorded = stations.OrderBy(s => s.Key, StringComparer.Ordinal).Select(s => s.Value).Where(s => pool.Count > 0 && !s.Facts.IsNormalsOnly() && pool.All(s.Years.ContainsKey))
            .Select(s => (IReadOnlyList<WeatherYear>)[.. pool.Select(season => s.Years[season])]).ToList();
        var departures = recorded.Count > 0 ? NormalsPool.Of(recorded) : null;
        var seasons = pool.Count > 0 ? pool : [NormalsYear.StandInSeason];
        return stations.ToDictionary(
            s => s.Key,
            s => s.Value.Facts.IsNormalsOnly()
                ? s.Value with
                {
                    Years = (departures?.Years(s.Value.Facts, pool) ?? seasons.Select(season => NormalsYear.Of(s.Value.Facts, season))).ToDictionary(y => y.Season),
                    DeparturesFrom = recorded.Count,
                }
                : s.Value,
            StringComparer.Ordinal);
    }
}
