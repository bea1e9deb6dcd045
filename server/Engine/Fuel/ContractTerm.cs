using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Fuel;

/// <summary>A contract's terms made ready to reckon with: dollars a kWh of fuel, volumes in kWh of fuel.</summary>
internal sealed record ContractTerm
{
    /// <summary>A delivery where none is told, US gallons of propane.</summary>
    private const double UsualDeliveryGallons = 250;

    /// <summary>Mean over peak load of a month of heating; common practice, no source.</summary>
    internal const double UsualLoadFactor = 0.3;

    private ContractTerm(ContractFacts c, double kwh, double moneyRate, double factor, SeriesBasis basis, HeatingValueSet? values)
    {
        (Facts, KwhPerUnit, Kind) = (c, kwh, c.Kind);
        double PerKwh(double? usdPerUnit, double otherwise) => usdPerUnit is { } usd ? factor * usd / kwh : otherwise;
        Weight = c.VolumeShare ?? 1;
        var share = factor * (c.IndexShare ?? 1);
        (Adder, Share) = (PerKwh(c.AdderUsdPerUnit, 0) + share * basis.UsdPerKwh, share * basis.Share);
        Price = PerKwh(c.PriceUsdPerUnit, 0);
        High = c.Kind is ContractKind.Capped or ContractKind.Collared ? PerKwh(c.CapUsdPerUnit, double.PositiveInfinity) : double.PositiveInfinity;
        Low = c.Kind == ContractKind.Collared ? PerKwh(c.FloorUsdPerUnit, double.NegativeInfinity) : double.NegativeInfinity;
        OverIndex = c.Kind != ContractKind.Indexed && c.OverIndexUsdPerUnit is { } over ? factor * over / kwh : null;
        (AnewAdder, AnewShare) = (factor * basis.UsdPerKwh, factor * basis.Share);
        BlockKwh = c.Kind != ContractKind.Indexed && c.BlockUnits is { } block ? block * kwh : double.PositiveInfinity;
        Leftover = c.Kind == ContractKind.PreBought ? c.Leftover ?? LeftoverRule.Lost : null;
        BilledShare = c.BilledShare ?? 0;
        PaidMonth = c.BlockPaidMonth is { } m ? SeasonMonth(m) : 0;
        MoneyRate = c.Kind == ContractKind.PreBought ? c.MoneyRatePerYear ?? moneyRate : 0;
        MinimumKwh = (c.MinimumTakeUnits ?? 0) * kwh;
        Tiers = [.. c.Tiers.Select(t => (t.FromUnits * kwh, factor * t.AdderUsdPerUnit / kwh))];
        DeliveryUsdPerKwh = c.DeliveryFeeUsd is { } fee ? factor * fee / (c.UnitsPerDelivery is { } units ? units * kwh : UsualDeliveryGallons * HeatingValues.KwhPerUnit(FuelKind.Propane, "gal", values)!.Value) : 0;
        (MonthlyFeeUsd, SeasonFeeUsd, RentUsd) = (factor * (c.MonthlyFeeUsd ?? 0), factor * (c.SeasonFeeUsd ?? 0), factor * (c.TankRentUsdPerYear ?? 0));
        DemandUsdPerMeanKw = factor * (c.DemandUsdPerKw ?? 0) / (c.LoadFactor ?? UsualLoadFactor);
        CutDays = c.InterruptedDays ?? 0;
    }

    public ContractFacts Facts { get; }

    public double KwhPerUnit { get; }

    public ContractKind Kind { get; }

    public double Weight { get; }

    public double Adder { get; }

    public double Share { get; }

    public double Price { get; }

    public double Low { get; }

    public double High { get; }

    /// <summary>What price, cap and floor are over the July index; null = as they stand.</summary>
    public double? OverIndex { get; }

    public double AnewAdder { get; }

    public double AnewShare { get; }

    public double BlockKwh { get; }

    public LeftoverRule? Leftover { get; }

    public double BilledShare { get; }

    /// <summary>Month of the season in which a block is paid, July = 0; May and June before the season are -2 and -1.</summary>
    public int PaidMonth { get; }

    public double MoneyRate { get; }

    public double MinimumKwh { get; }

    public IReadOnlyList<(double FromKwh, double Adder)> Tiers { get; }

    public double DeliveryUsdPerKwh { get; }

    public double MonthlyFeeUsd { get; }

    public double SeasonFeeUsd { get; }

    public double RentUsd { get; }

    /// <summary>Dollars a kW of the month's mean load.</summary>
    public double DemandUsdPerMeanKw { get; }

    public double CutDays { get; }

    /// <summary>Which of the scatters of the tank's or meter's terms its price lies off the line by, each with the index that a dollar of it stands for.</summary>
    public IReadOnlyList<(int At, double PerUsd)> Scatter { get; init; } = [];

    /// <summary>Whether its price follows the index anywhere: in its kind, agreed anew, or over a block.</summary>
    public bool FollowsIndex => Kind is not (ContractKind.Fixed or ContractKind.PreBought) || OverIndex is not null || double.IsFinite(BlockKwh);

    /// <summary>Whether a month's price depends on nothing but that month's index.</summary>
    public bool IsMonthly => OverIndex is null && double.IsPositiveInfinity(BlockKwh) && MinimumKwh == 0 && Tiers.Count == 0 && DemandUsdPerMeanKw == 0 && CutDays == 0;

    /// <summary>Month of the season of a calendar month in which a block is paid: May and June are those before the season, -2 and -1.</summary>
    public static int SeasonMonth(int calendarMonth) => calendarMonth >= 5 ? calendarMonth - 7 : calendarMonth + 5;

    /// <summary>Makes the terms of a sound contract.</summary>
    public static ContractTerm Of(ContractFacts contract, FuelKind fuel, double moneyRate, double factor, SeriesBasis basis, HeatingValueSet? values) =>
        new(contract, HeatingValues.KwhPerUnit(fuel, contract.Unit, values)!.Value, moneyRate, factor, basis, values);

    /// <summary>The index as the contract's own price has it: with what that lies off its line, never under a fifth of the line's price.</summary>
    public double OwnIndex(double index, double shift) => index + Math.Max(shift, -(1 - PriceScatter.LeastShare) * Math.Max(0, Adder + Share * index) / Share);

    /// <summary>Price of what the contract covers, before fees.</summary>
    public double PriceAt(double index, double july)
    {
        var anew = AnewAdder + AnewShare * july;
        var (price, low, high) = OverIndex is { } over ? (anew + over, Kind == ContractKind.Collared ? Low : double.NegativeInfinity, anew + over) : (Price, Low, High);
        return Kind is ContractKind.Fixed or ContractKind.PreBought ? price : Math.Min(high, Math.Max(Math.Min(low, high), Math.FusedMultiplyAdd(Share, index, Adder)));
    }
}
