using FarmPortfolio.Engine.Weather;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A winter made from monthly normals.</summary>
[Name("MadeSeason")]
public sealed record MadeSeasonView(int Season, string Name, double DegreeDaysK);

/// <summary>Monthly normals of a station that has no record.</summary>
/// <param name="MonthlyMeanC">January to December, C.</param>
/// <param name="DailySpanK">Usual highest less usual lowest of a day, K.</param>
/// <param name="SpanTold">Whether the span came with the normals; else it is taken for granted.</param>
/// <param name="DegreeDaysK">Degree days of the year below the base, by Erbs, Klein and Beckman (1983).</param>
/// <param name="DeparturesFrom">Stations whose record tells how winters differ; 0 = none, so that the spread is missing.</param>
/// <param name="Made">Winters made, in order.</param>
[Name("StationNormals")]
public sealed record StationNormalsView(IEnumerable<double> MonthlyMeanC, double DailySpanK, bool SpanTold, double DegreeDaysK, int DeparturesFrom, IEnumerable<MadeSeasonView> Made);

/// <summary>A station that is known by monthly normals only.</summary>
public sealed partial class StationView
{
    /// <summary>Its name, marked where only monthly normals are known.</summary>
    public string MarkedName => NormalsMark.Name(item);

    /// <summary>What it means that only monthly normals are known, in plain sentences; empty for a station with a record.</summary>
    public IEnumerable<string> NormalsWords => NormalsMark.Meaning(register.Winters(item.Id));

    /// <summary>The normals and the winters made from them; null for a station with a record.</summary>
    public StationNormalsView? Normals(double baseC = 15.56)
    {
        if (!item.Facts.IsNormalsOnly() || register.Winters(item.Id) is not { } winters)
        {
            return null;
        }

        var means = item.Facts.MonthlyMeanC!;
        var spread = DegreeDays.SpreadOfMonthsK(means);
        return new(
            means, item.Facts.DailySpanK ?? NormalsYear.UsualSpanK, item.Facts.DailySpanK is not null,
            means.Select((t, m) => DegreeDays.OfMonthK(t, DateTime.DaysInMonth(2023, m + 1), baseC, spread)).Sum(), winters.DeparturesFrom ?? 0,
            winters.Years.Values.OrderBy(y => y.Season).Select(y => new MadeSeasonView(y.Season, y.Season == NormalsYear.StandInSeason ? "of the normals" : SeasonCalendar.Name(y.Season), y.DegreeDaysK(baseC))));
    }
}

/// <summary>The mark of a farm's station.</summary>
public sealed partial class FarmView
{
    /// <summary>What it means that its station is known by monthly normals only, in plain sentences; empty for one with a record.</summary>
    public IEnumerable<string> NormalsWords => NormalsMark.Meaning(register.Winters(item.Facts.WeatherStationId));
}

/// <summary>The mark of a study.</summary>
public sealed partial class StudyView
{
    /// <summary>Houses that the study reckoned on winters made from monthly normals, a sentence a station; empty = every house had recorded winters.</summary>
    public IEnumerable<string> NormalsOnly
    {
        get
        {
            var stations = register.Studies.Inputs<WeatherStationFacts>(register.Viewer, row, ItemKind.WeatherStation);
            var normals = stations.Where(s => s.Facts.IsNormalsOnly()).Select(s => s.Id).ToList();
            if (normals.Count == 0)
            {
                return [];
            }

            var farms = register.Studies.Inputs<Engine.Farms.FarmFacts>(register.Viewer, row, ItemKind.Farm).ToDictionary(f => f.Id, f => f.Facts.WeatherStationId);
            var houses = register.Studies.Inputs<Engine.Farms.HouseFacts>(register.Viewer, row, ItemKind.House).GroupBy(h => farms.GetValueOrDefault(h.Facts.FarmId) ?? string.Empty).ToDictionary(g => g.Key, g => g.Count());
            var alone = stations.All(s => s.Facts.IsNormalsOnly() || s.Facts.Seasons.Count == 0);
            return normals.Where(houses.ContainsKey).Select(id => (Name: register.Stations.TryGetValue(id, out var s) ? s.Remarks.Name ?? "unnamed" : "a station taken away since", Houses: houses[id])).OrderBy(s => s.Name, StringComparer.Ordinal)
                .Select(s => $"{s.Houses} {(s.Houses == 1 ? "house is" : "houses are")} reckoned on winters made from the monthly normals of {s.Name}: the cold spells of real winters are not in them{(alone ? ", and the spread between winters is missing" : string.Empty)}.");
        }
    }
}
