using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Weather;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Storage.Kinds;

/// <summary>Weather stations.</summary>
internal sealed class WeatherStationTable() : KindTable<WeatherStationFacts>(ItemKind.WeatherStation, "ws")
{
    /// <inheritdoc/>
    public override IReadOnlyList<Unique> Uniques { get; } = [Unique.Name()];

    /// <inheritdoc/>
    public override IEnumerable<string> Blobs(string facts) => CanonicalJson.Read<WeatherStationFacts>(facts).Seasons.Select(s => s.Sha256);

    /// <inheritdoc/>
    protected override Dictionary<string, object?> Columns(WeatherStationFacts facts, Remarks remarks) => new(Named(remarks))
    {
        ["latitude_deg"] = facts.LatitudeDeg,
        ["longitude_deg"] = facts.LongitudeDeg,
        ["elevation_m"] = facts.ElevationM,
        ["first_season"] = facts.Seasons.Count > 0 ? facts.Seasons.Min(s => (long)s.Season) : null,
        ["last_season"] = facts.Seasons.Count > 0 ? facts.Seasons.Max(s => (long)s.Season) : null,
    };
}

/// <summary>Monthly price records.</summary>
internal sealed class PriceSeriesTable() : KindTable<PriceSeriesFacts>(ItemKind.PriceSeries, "ps")
{
    /// <inheritdoc/>
    public override IReadOnlyList<Unique> Uniques { get; } = [Unique.Name()];

    /// <inheritdoc/>
    protected override Dictionary<string, object?> Columns(PriceSeriesFacts facts, Remarks remarks) => new(Named(remarks))
    {
        ["fuel"] = facts.Fuel.ToString(),
        ["market"] = facts.Market.ToString(),
        ["unit"] = facts.Unit,
        ["first_month"] = Text(facts.FirstMonthOn),
        ["last_month"] = Text(facts.FirstMonthOn.AddMonths(Math.Max(0, facts.UsdPerUnit.Count - 1))),
    };
}

/// <summary>Sets of assumptions.</summary>
internal sealed class ScenarioSetTable() : KindTable<ScenarioSetFacts>(ItemKind.ScenarioSet, "sc")
{
    /// <inheritdoc/>
    public override IReadOnlyList<Unique> Uniques { get; } = [Unique.Name()];

    /// <inheritdoc/>
    protected override Dictionary<string, object?> Columns(ScenarioSetFacts facts, Remarks remarks) => new(Named(remarks))
    {
        ["first_season"] = (long)facts.FirstSeason,
        ["season_count"] = (long)facts.SeasonCount,
        ["seed"] = facts.Seed,
        ["replicate_count"] = (long)facts.ReplicateCount,
        ["path_count"] = (long)facts.PathCount,
    };

    /// <inheritdoc/>
    protected override IEnumerable<Reference> References(ScenarioSetFacts facts) =>
        facts.Prices.Where(p => p.PriceSeriesId is not null).Select(p => new Reference("prices", ItemKind.PriceSeries, p.PriceSeriesId!));
}
