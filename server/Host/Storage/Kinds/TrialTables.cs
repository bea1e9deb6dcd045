using FarmPortfolio.Engine.Trials;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Storage.Kinds;

/// <summary>Trials of houses run side by side.</summary>
internal sealed class TrialTable() : KindTable<TrialFacts>(ItemKind.Trial, "tr")
{
    /// <inheritdoc/>
    public override bool Studied => false;

    /// <inheritdoc/>
    public override IReadOnlyList<Link> Links { get; } = [new("farm_id", ItemKind.Farm, Bond.GoesWith), new("weather_station_id", ItemKind.WeatherStation, Bond.Holds)];

    /// <inheritdoc/>
    public override IEnumerable<string> Blobs(string facts) => [CanonicalJson.Read<TrialFacts>(facts).ReadingsSha256];

    /// <inheritdoc/>
    protected override Dictionary<string, object?> Columns(TrialFacts facts, Remarks remarks) => new()
    {
        ["farm_id"] = facts.FarmId,
        ["weather_station_id"] = facts.WeatherStationId,
        ["retrofit_code"] = string.Join(' ', facts.Houses.Select(h => h.RetrofitCode).OfType<string>().Distinct(StringComparer.Ordinal)),
        ["starts_on"] = Text(facts.StartsOn),
        ["ends_on"] = Text(facts.EndsOn),
    };

    /// <inheritdoc/>
    protected override IEnumerable<Reference> References(TrialFacts facts)
    {
        if (facts.FarmId is { } farm)
        {
            yield return new("farmId", ItemKind.Farm, farm);
        }

        if (facts.WeatherStationId is { } station)
        {
            yield return new("weatherStationId", ItemKind.WeatherStation, station);
        }
    }
}

/// <summary>Evidence on retrofits' savings.</summary>
internal sealed class EvidenceTable() : KindTable<EvidenceFacts>(ItemKind.Evidence, "ev")
{
    /// <inheritdoc/>
    public override IReadOnlyList<Link> Links { get; } = [new("trial_id", ItemKind.Trial, Bond.GoesWith)];

    /// <inheritdoc/>
    protected override Dictionary<string, object?> Columns(EvidenceFacts facts, Remarks remarks) => new()
    {
        ["trial_id"] = facts.TrialId,
        ["retrofit_code"] = facts.RetrofitCode,
        ["kind"] = facts.Kind.ToString(),
        ["counted"] = facts.Counted ? 1L : 0L,
        ["factor_mean"] = facts.FactorMean,
        ["factor_sd"] = facts.FactorSd,
    };

    /// <inheritdoc/>
    protected override IEnumerable<Reference> References(EvidenceFacts facts) => facts.TrialId is { } trial ? [new("trialId", ItemKind.Trial, trial)] : [];
}
