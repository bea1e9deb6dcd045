using FarmPortfolio.Engine.Economics;

namespace FarmPortfolio.Engine.Studies;

/// <summary>What a study found for one option.</summary>
public sealed record OptionResult
{
    /// <summary>House.</summary>
    public required string HouseId { get; init; }

    /// <summary>Option's key.</summary>
    public required string Key { get; init; }

    /// <summary>Fuel of the house's first supply group.</summary>
    public required FuelKind Fuel { get; init; }

    /// <summary>Data grade of the house.</summary>
    public required DataGrade Grade { get; init; }

    /// <summary>Outlay, mean, over what the house would spend at that moment anyway, US dollars of the season it is paid.</summary>
    public required double OutlayUsd { get; init; }

    /// <summary>Season of the study, from 0, before which it is built.</summary>
    public required int StartSeason { get; init; }

    /// <summary>Heat demand as the house stands, mean of the winters, kWh.</summary>
    public required double BaseHeatKwh { get; init; }

    /// <summary>Heat saved, mean of the winters, realised factor in, kWh.</summary>
    public required double HeatSavedKwh { get; init; }

    /// <summary>Mean realised factor: true saving over modelled saving.</summary>
    public required double RealisedMean { get; init; }

    /// <summary>Fuel saved, mean of the winters, realised factor in, kWh.</summary>
    public required double FuelSavedKwh { get; init; }

    /// <summary>Fuel that a switch moves to; null = it stays on its own.</summary>
    public FuelKind? NewFuel { get; init; }

    /// <summary>What it burns of it in a season, mean of the winters, kWh; null = it stays on its own fuel.</summary>
    public double? NewFuelKwh { get; init; }

    /// <summary>CO2 not emitted a season, kg.</summary>
    public required double Co2SavedKg { get; init; }

    /// <summary>Net saving of a season, mean over the horizon of each path.</summary>
    public required Distribution SavingUsd { get; init; }

    /// <summary>Net present value.</summary>
    public required Distribution NpvUsd { get; init; }

    /// <summary>Savings-to-investment ratio; null without outlay.</summary>
    public Distribution? SavingsToInvestment { get; init; }

    /// <summary>The least net saving of any season from installation on, by path.</summary>
    public required Distribution WorstSeasonUsd { get; init; }

    /// <summary>Mean saving of fuel a season, before running and renewals, over all seasons and futures, US dollars.</summary>
    public required double FuelSavingUsd { get; init; }

    /// <summary>Net saving season by season; how it spreads is told of the sums, <see cref="NetBySeason"/>, that paybacks are read from.</summary>
    public required IReadOnlyList<SeasonMean> SavingBySeason { get; init; }

    /// <summary>Net saving added up, season by season, before the outlay.</summary>
    public required IReadOnlyList<Distribution> NetBySeason { get; init; }

    /// <summary>Lasting payback, simple.</summary>
    public required Payback Lasting { get; init; }

    /// <summary>First payback, simple.</summary>
    public required Payback First { get; init; }

    /// <summary>Lasting payback, discounted.</summary>
    public required Payback LastingDiscounted { get; init; }

    /// <summary>First payback, discounted.</summary>
    public required Payback FirstDiscounted { get; init; }

    /// <summary>Share of futures with a net present value below zero.</summary>
    public required double LossShare { get; init; }

    /// <summary>One single future, added up.</summary>
    public required IReadOnlyList<double> OnePath { get; init; }

    /// <summary>Costs behind it.</summary>
    public required OptionCosts Costs { get; init; }
}
