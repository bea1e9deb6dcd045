using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Storage.Kinds;

/// <summary>Farms.</summary>
internal sealed class FarmTable() : KindTable<FarmFacts>(ItemKind.Farm, "f")
{
    /// <inheritdoc/>
    public override IReadOnlyList<Link> Links { get; } = [new("weather_station_id", ItemKind.WeatherStation, Bond.Holds)];

    /// <inheritdoc/>
    public override IReadOnlyList<Unique> Uniques { get; } = [Unique.Name()];

    /// <inheritdoc/>
    protected override Dictionary<string, object?> Columns(FarmFacts facts, Remarks remarks) => new(Named(remarks))
    {
        ["place"] = remarks.Place,
        ["weather_station_id"] = facts.WeatherStationId,
        ["member_since_on"] = Text(facts.MemberSinceOn),
        ["related_key"] = facts.RelatedKey,
        ["consent_bills"] = remarks.Consent is { Bills: true } ? 1L : 0L,
        ["consent_name"] = remarks.Consent is { Name: true } ? 1L : 0L,
        ["consent_lender"] = remarks.Consent is { Lender: true } ? 1L : 0L,
    };

    /// <inheritdoc/>
    protected override IEnumerable<Reference> References(FarmFacts facts) => facts.WeatherStationId is { } id ? [new("weatherStationId", ItemKind.WeatherStation, id)] : [];
}
