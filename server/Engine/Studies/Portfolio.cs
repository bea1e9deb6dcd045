using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.HeatDemand.Calibration;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Trials;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.Studies;

/// <summary>A station with its winters made hourly: recorded ones, or made from its monthly normals (<see cref="NormalsStations"/>).</summary>
/// <param name="Facts">Place.</param>
/// <param name="Years">Winters by season year.</param>
public sealed record StationWinters(WeatherStationFacts Facts, IReadOnlyDictionary<int, WeatherYear> Years)
{
    /// <summary>Of a station that is known by monthly normals only: stations whose record tells how its winters differ; 0 = none, so that its spread is missing. Null = not made, or recorded.</summary>
    public int? DeparturesFrom { get; init; }

    /// <summary>The winters that were really recorded: what exact dates may be held against.</summary>
    public IReadOnlyDictionary<int, WeatherYear> Recorded => Facts.IsNormalsOnly() ? new Dictionary<int, WeatherYear>() : Years;
}

/// <summary>All that a study reads, by id.</summary>
public sealed record Portfolio
{
    /// <summary>Assumptions.</summary>
    public required ScenarioSetFacts Set { get; init; }

    /// <summary>Realised-saving factors that evidence has updated, by retrofit; the catalogue holds them already.</summary>
    public IReadOnlyDictionary<string, FactorUpdate> RealisedFactors { get; init; } = new Dictionary<string, FactorUpdate>();

    /// <summary>Catalogue with the co-op's own entries, and the factors that evidence has updated.</summary>
    public required Catalogue Catalogue { get; init; }

    /// <summary>Farms.</summary>
    public required IReadOnlyDictionary<string, FarmFacts> Farms { get; init; }

    /// <summary>Houses.</summary>
    public required IReadOnlyDictionary<string, HouseFacts> Houses { get; init; }

    /// <summary>Tanks and meters.</summary>
    public required IReadOnlyDictionary<string, SupplyGroupFacts> SupplyGroups { get; init; }

    /// <summary>Fuel records by supply group.</summary>
    public required IReadOnlyDictionary<string, FuelRecordFacts> FuelRecords { get; init; }

    /// <summary>What the bills say of a house's loss multiplier, by house; derived from all the rest when the study starts. A house that is not there is taken by its fuel record: grade B with one, C without.</summary>
    public IReadOnlyDictionary<string, LossFit> LossFits { get; init; } = new Dictionary<string, LossFit>();

    /// <summary>Contracts in force by supply group.</summary>
    public required IReadOnlyDictionary<string, ContractFacts> Contracts { get; init; }

    /// <summary>All contracts by identifier: mixed ones in force, and what one rolls into. Empty = <see cref="Contracts"/> is all there is.</summary>
    public IReadOnlyDictionary<string, ContractFacts> ContractsById { get; init; } = new Dictionary<string, ContractFacts>();

    /// <summary>Options by house, beside "as it stands".</summary>
    public required IReadOnlyDictionary<string, IReadOnlyList<OptionFacts>> Options { get; init; }

    /// <summary>Quotes by farm.</summary>
    public required IReadOnlyDictionary<string, IReadOnlyList<QuoteFacts>> Quotes { get; init; }

    /// <summary>Stations.</summary>
    public required IReadOnlyDictionary<string, StationWinters> Stations { get; init; }

    /// <summary>The price series of each fuel.</summary>
    public required IReadOnlyDictionary<FuelKind, PriceSeriesFacts> Prices { get; init; }

    /// <summary>Price series that contracts follow of their own, by identifier.</summary>
    public IReadOnlyDictionary<string, PriceSeriesFacts> OwnSeries { get; init; } = new Dictionary<string, PriceSeriesFacts>();

    /// <summary>A contract's own series told by the record that the futures of its fuel roll on from.</summary>
    /// <param name="contract">Contract.</param>
    /// <param name="fuel">Fuel of its tank or meter.</param>
    /// <returns>The basis, the index itself where it has no own series; null with a fault.</returns>
    public (SeriesBasis? Basis, Fault? Fault) BasisOf(ContractFacts contract, FuelKind fuel) =>
        contract.PriceSeriesId is not { } id ? (SeriesBasis.Index, null)
        : OwnSeries.TryGetValue(id, out var own) ? SeriesBasis.Of(own, Prices.GetValueOrDefault(fuel), Set.Prices.FirstOrDefault(p => p.Fuel == fuel)?.RetailAdderUsdPerUnit, fuel, Set.HeatingValues())
        : (null, new("NO_SERIES", "priceSeriesId", "The contract follows a price series that is not there.", "Choose a series of its fuel, or none for the index."));

    /// <summary>Contracts in force on a tank or meter, in order of their identifiers.</summary>
    /// <param name="supplyGroupId">Tank or meter.</param>
    /// <returns>Contracts; empty = the index.</returns>
    public IReadOnlyList<ContractFacts> InForce(string supplyGroupId) => ContractsById.Count > 0
        ? [.. ContractsById.Where(c => c.Value.SupplyGroupId == supplyGroupId && c.Value.Standing == ContractStanding.InForce).OrderBy(c => c.Key, StringComparer.Ordinal).Select(c => c.Value)]
        : Contracts.TryGetValue(supplyGroupId, out var one) ? [one] : [];

    /// <summary>A contract by its identifier.</summary>
    /// <param name="id">Contract.</param>
    /// <returns>The contract, or null.</returns>
    public ContractFacts? Contract(string id) => ContractsById.GetValueOrDefault(id);
}
