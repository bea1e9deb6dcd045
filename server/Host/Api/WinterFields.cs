using FarmPortfolio.Engine.Weather;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>How much of a season was recorded, and how its gaps are filled.</summary>
[Name("SeasonCoverage")]
public sealed record CoverageView(int Season, string Name, RecordStep Step, double Share, int Missing, int LongestGap, int FilledByLine, int FilledByUsualDay, bool Usable);

/// <summary>Whether winters are getting warmer.</summary>
[Name("WinterTrend")]
public sealed record TrendView(double SenKPerDecade, double PValue, int Seasons, double SpreadSdK);

/// <summary>Seasons that stand for mild, middling and hard.</summary>
[Name("ReferenceSeasons")]
public sealed record ReferenceView(int Mild, int Middle, int Hard);

/// <summary>Severity of a season to come under the winter model, per cent against the middle recorded one.</summary>
[Name("WinterOutlook")]
public sealed record OutlookView(int Season, string Name, double P10Pct, double P50Pct, double P90Pct);

/// <summary>What a station's record says of its winters.</summary>
public sealed partial class StationView
{
    private IReadOnlyList<WeatherYear> Recorded => [.. (register.Winters(item.Id)?.Years.Values ?? []).Where(y => !y.FromNormals).OrderBy(y => y.Season)];

    /// <summary>Whether only monthly normals are known, so that no winter of it was recorded.</summary>
    public bool NormalsOnly => item.Facts.IsNormalsOnly();

    /// <summary>Trend of the winters; null below eight.</summary>
    public TrendView? Trend => Recorded is { Count: >= 8 } years && WinterTrend.Of(years) is var t ? new(10 * t.SenKPerYear, t.PValue, t.Seasons, t.SpreadSdK) : null;

    /// <summary>Reference seasons; null below three.</summary>
    public ReferenceView? Reference(double baseC = 15.56) => Recorded is { Count: >= 3 } years && WinterSeverity.Of(years, baseC).Reference is var r ? new(r.Mild, r.Middle, r.Hard) : null;

    /// <summary>Correlation of a winter with the next: near 0, they may be drawn independently; null below three.</summary>
    public double? NextWinterCorrelation(double baseC = 15.56) => Recorded is { Count: >= 3 } years ? WinterSeverity.Of(years, baseC).NextYearCorrelation : null;

    /// <summary>Coverage of every recorded season, those too gappy to use among them.</summary>
    public IEnumerable<CoverageView> Coverage
    {
        get
        {
            var known = register.Winters(item.Id)?.Years ?? new Dictionary<int, WeatherYear>();
            foreach (var season in item.Facts.Seasons.OrderBy(s => s.Season))
            {
                var values = register.Blobs.Read(register.Viewer, season.Sha256);
                var c = values is null ? new(season.Days, season.Days, season.Days, 0, 0, false) : season.Step == RecordStep.Hourly ? SeasonCoverage.OfHourly(values) : SeasonCoverage.OfDaily(values);
                yield return new(season.Season, SeasonCalendar.Name(season.Season), season.Step, c.Share, c.Missing, c.LongestGap, c.FilledByLine, c.FilledByUsualHour, c.Usable && known.ContainsKey(season.Season));
            }
        }
    }

    /// <summary>The winters that futures draw under the assumptions in use.</summary>
    public IEnumerable<OutlookView> Outlook(double baseC = 15.56)
    {
        var set = register.SetFacts;
        var pool = set.WinterPool.Count > 0 ? Recorded.Where(y => set.WinterPool.Contains(y.Season)).ToList() : Recorded;
        return pool.Count == 0 || pool.All(y => y.DegreeDaysK(baseC) <= 0) ? [] : WinterOutlook.Of(pool, baseC, set.OffsetK, set.OffsetTrendKPerYear, set.OffsetSdK, set.SeasonCount)
            .Select(o => new OutlookView(set.FirstSeason + o.Season, SeasonCalendar.Name(set.FirstSeason + o.Season), 100 * o.P10, 100 * o.P50, 100 * o.P90));
    }
}
