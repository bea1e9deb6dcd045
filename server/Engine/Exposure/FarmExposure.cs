using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Engine.Exposure;

/// <summary>A contract with its name.</summary>
/// <param name="Id">Identifier.</param>
/// <param name="Name">Name.</param>
/// <param name="Facts">Terms.</param>
public sealed record NamedContract(string Id, string Name, ContractFacts Facts);

/// <summary>One way beside the present one.</summary>
/// <param name="Cost">Its cost.</param>
/// <param name="IsReckoned">Whether the terms are reckoned here, not offered by anybody.</param>
/// <param name="LessUsd">Cost of the present way less this one, on the same futures.</param>
/// <param name="BreakEvenUsdPerUnit">Price of this way's fuel, fees off, at which it costs the mean of the present way; null = none.</param>
/// <param name="HeaterUsd">What its heater costs; 0 = the present one serves.</param>
public sealed record OtherWay(WayCost Cost, bool IsReckoned, Distribution LessUsd, double? BreakEvenUsdPerUnit, double HeaterUsd);

/// <summary>What an option takes off a season's cost.</summary>
/// <param name="Key">Option.</param>
/// <param name="Houses">Houses it is put on.</param>
/// <param name="Cost">Cost of the season with it.</param>
/// <param name="MeanOffUsd">What it takes off the mean.</param>
/// <param name="TailOffUsd">What it takes off one season in twenty.</param>
/// <param name="YearlyUsd">Outlay as a yearly payment over its life, and running.</param>
/// <param name="BreakEvenUsdPerUnit">Mean price of the fuel over which it earns that; null = it saves no fuel.</param>
public sealed record TailCut(string Key, int Houses, Distribution Cost, double MeanOffUsd, double TailOffUsd, double YearlyUsd, double? BreakEvenUsdPerUnit);

/// <summary>What heating some houses can cost in a season: as bought now, on every fuel and contract, with every option.</summary>
public sealed record FarmExposure
{
    /// <summary>Heat of the season, kWh.</summary>
    public required Distribution HeatKwh { get; init; }

    /// <summary>As it is bought now.</summary>
    public required WayCost Own { get; init; }

    /// <summary>What made the dearest seasons dear.</summary>
    public required WorstSeasons Worst { get; init; }

    /// <summary>Other ways, contracts first.</summary>
    public required IReadOnlyList<OtherWay> Ways { get; init; }

    /// <summary>Options and the tail.</summary>
    public required IReadOnlyList<TailCut> Options { get; init; }

    /// <summary>Fixed price that costs the mean of the index, US dollars a unit.</summary>
    public required double FairFixedUsdPerUnit { get; init; }

    /// <summary>Houses left out and contracts that cannot be, with the reason.</summary>
    public required IReadOnlyList<(string Id, Fault Fault)> LeftOut { get; init; }

    /// <summary>Reckons the exposure of some houses of a portfolio.</summary>
    /// <param name="portfolio">All facts.</param>
    /// <param name="futures">Futures.</param>
    /// <param name="blocks">Their replicates.</param>
    /// <param name="houseIds">Houses.</param>
    /// <param name="contracts">Contracts of their tanks and meters, in force and offered.</param>
    /// <param name="season">Season from 0.</param>
    /// <returns>The exposure; null where no house can be reckoned, with the reasons.</returns>
    public static (FarmExposure? Exposure, IReadOnlyList<(string Id, Fault Fault)> LeftOut) Of(
        Portfolio portfolio, StudyFutures futures, IReadOnlyList<FuturesBlock> blocks, IReadOnlyList<string> houseIds, IReadOnlyList<NamedContract> contracts, int season)
    {
        var left = new List<(string, Fault)>();
        var houses = new List<StudyHouse>();
        var bare = portfolio with { Contracts = new Dictionary<string, ContractFacts>() };
        foreach (var id in houseIds)
        {
            var (house, faults) = StudyHouse.Of(bare, id, futures);
            left.AddRange(faults.Select(f => (id, f)));
            if (house is not null)
            {
                houses.Add(house);
            }
        }

        return houses.Count == 0 ? (null, left) : (new ExposureWork(portfolio, futures.Spec, blocks, houses, contracts, season, left).Do(), left);
    }
}
