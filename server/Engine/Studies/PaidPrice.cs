using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Studies;

/// <summary>The price paid in a month under an indexed or fixed contract: a + b x index, or the fixed price while it runs and the index after.</summary>
internal readonly struct PaidPrice
{
    private readonly double adder;
    private readonly double share;
    private readonly double fixedUsd;
    private readonly int firstMonth;
    private readonly int lastFixed;

    public PaidPrice(ContractFacts? contract, FuelKind fuel, int firstSeason)
    {
        firstMonth = 12 * firstSeason + 6;
        var kwh = contract is null ? 1 : HeatingValues.KwhPerUnit(fuel, contract.Unit) ?? throw new ArgumentException($"{fuel} is not sold by the {contract.Unit}", nameof(contract));
        adder = (contract?.AdderUsdPerUnit ?? 0) / kwh;
        share = contract?.IndexShare ?? 1;
        fixedUsd = (contract?.PriceUsdPerUnit ?? 0) / kwh;
        lastFixed = contract is { Kind: ContractKind.Fixed } ? contract.EndsOn is { } end ? 12 * end.Year + end.Month - 1 : int.MaxValue : int.MinValue;
        SeasonFeesUsd = 12 * (contract?.MonthlyFeeUsd ?? 0) + (contract?.SeasonFeeUsd ?? 0) + (contract?.TankRentUsdPerYear ?? 0);
    }

    public double SeasonFeesUsd { get; }

    public double UsdPerKwh(double index, int season, int month) => firstMonth + 12 * season + month <= lastFixed ? fixedUsd : adder + share * index;

}
