using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Engine.Exposure;

/// <summary>Terms at which a contract costs the same in the mean as the index: what an offer is held against.</summary>
public static class FairTerms
{
    /// <summary>The fixed price of a season that costs the mean of the index on the same heat.</summary>
    /// <param name="onIndex">The heat on the index.</param>
    /// <returns>US dollars a unit of the way.</returns>
    public static double FixedUsdPerUnit(WayCost onIndex) => onIndex.Cost.Mean / onIndex.Units;

    /// <summary>What a contract may cost as a fee a season before it is dearer in the mean than another way: a cap's fair premium.</summary>
    /// <param name="without">The way without it.</param>
    /// <param name="with">The way with it, its own fee not in it.</param>
    /// <returns>US dollars a season; negative = it is dearer already.</returns>
    public static double SeasonFeeUsd(WayCost without, WayCost with) => without.Cost.Mean - with.Cost.Mean;

    /// <summary>The price of one fuel at which its heat costs the mean of another way.</summary>
    /// <param name="one">The way whose price is asked.</param>
    /// <param name="other">The other way.</param>
    /// <returns>US dollars a unit of <paramref name="one"/>, its fees taken off; null where its fees alone cost more.</returns>
    public static double? BreakEvenUsdPerUnit(WayCost one, WayCost other)
    {
        var fees = one.MeanCharges.TotalUsd - one.MeanCharges.FuelUsd;
        return other.Cost.Mean > fees ? (other.Cost.Mean - fees) / one.Units : null;
    }

    /// <summary>The price of a fuel over which a yearly cost is earned by the units it saves: a retrofit's break-even.</summary>
    /// <param name="usdPerYear">Outlay as a yearly payment and running, US dollars.</param>
    /// <param name="unitsSaved">Units saved a season.</param>
    /// <returns>US dollars a unit; null where nothing is saved.</returns>
    public static double? RetrofitUsdPerUnit(double usdPerYear, double unitsSaved) => unitsSaved > 0 ? usdPerYear / unitsSaved : null;

    /// <summary>Terms of a contract that holds for the season.</summary>
    /// <param name="contract">Contract.</param>
    /// <param name="fuel">Fuel.</param>
    /// <param name="spec">Futures.</param>
    /// <returns>Terms.</returns>
    internal static SupplyTerms Terms(ContractFacts? contract, FuelKind fuel, FuturesSpec spec) =>
        SupplyTerms.Of(contract is null ? [] : [contract], null, fuel, null, spec.Set.FirstSeason, spec.Set.SeasonCount, spec.Set.DiscountRate, values: spec.Set.HeatingValues()).Terms!;
}
