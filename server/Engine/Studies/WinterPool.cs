namespace FarmPortfolio.Engine.Studies;

/// <summary>The seasons that futures draw winters from. Stations with a record make them; one that is known by monthly normals only follows, and makes a pool alone where no station has a record.</summary>
public static class WinterPool
{
    /// <summary>The seasons told, or else those that every station with at least half as many whole winters as the longest record has.</summary>
    /// <param name="stations">All stations.</param>
    /// <param name="told">Seasons that the assumptions name; empty = none.</param>
    /// <returns>Season years, rising.</returns>
    public static List<int> Of(IEnumerable<StationWinters> stations, IReadOnlyList<int> told)
    {
        if (told.Count > 0)
        {
            return [.. told.Order()];
        }

        var telling = Telling(stations);
        var longest = telling.Select(s => s.Years.Count).DefaultIfEmpty().Max();
        return [.. telling.Where(s => s.Years.Count > 0 && 2 * s.Years.Count >= longest).Select(s => s.Years.Keys.AsEnumerable())
            .DefaultIfEmpty([]).Aggregate((a, b) => a.Intersect(b)).Order()];
    }

    /// <summary>The stations with a record, or all where none has one.</summary>
    private static List<StationWinters> Telling(IEnumerable<StationWinters> stations)
    {
        var all = stations.ToList();
        var recorded = all.Where(s => !s.Facts.IsNormalsOnly()).ToList();
        return recorded.Any(s => s.Years.Count > 0) ? recorded : all;
    }
}
