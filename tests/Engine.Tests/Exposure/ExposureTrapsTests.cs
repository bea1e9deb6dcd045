using FarmPortfolio.Engine.Exposure;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Engine.Tests.Studies;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Tests.Exposure;

/// <summary>How a page on exposure misleads, and that ours does not; the table stands in docs/method/traps.md.</summary>
public class ExposureTrapsTests
{
    [Fact]
    public void Houses_add_up_in_dollars_and_units_and_no_percentage_is_averaged()
    {
        var portfolio = SmallPortfolio.Of();
        var (both, one, other) = (Of(portfolio), Of(portfolio, houses: ["h0"]), Of(portfolio, houses: ["h1"]));
        foreach (var option in both.Options)
        {
            var (a, b) = (one.Options.Single(o => o.Key == option.Key), other.Options.Single(o => o.Key == option.Key));
            Near($"{option.Key}, mean taken off", a.MeanOffUsd + b.MeanOffUsd, option.MeanOffUsd);
            Near($"{option.Key}, yearly cost", a.YearlyUsd + b.YearlyUsd, option.YearlyUsd);
            Near($"{option.Key}, price that earns it", (a.YearlyUsd + b.YearlyUsd) / (a.YearlyUsd / a.BreakEvenUsdPerUnit!.Value + b.YearlyUsd / b.BreakEvenUsdPerUnit!.Value), option.BreakEvenUsdPerUnit!.Value);
        }
    }

    [Fact]
    public void A_combination_takes_off_less_than_its_parts_and_more_than_either()
    {
        var off = Of(SmallPortfolio.Of(1)).Options.ToDictionary(o => o.Key, o => o.MeanOffUsd);
        Assert.InRange(off["curtain-foam-now"], Math.Max(off["curtain-now"], off["foam-now"]), 0.95 * (off["curtain-now"] + off["foam-now"]));
    }

    [Fact]
    public void What_is_taken_back_as_warmth_comes_off_what_an_option_takes_off()
    {
        var (all, less) = (Of(SmallPortfolio.Of(1)), Of(SmallPortfolio.Of(1, change: s => s with { TakeBackShare = 0.2 })));
        Assert.Equal(all.Own.Cost.Mean, less.Own.Cost.Mean, 1e-9);
        Assert.All(all.Options.Zip(less.Options.OrderBy(o => all.Options.ToList().FindIndex(a => a.Key == o.Key))), o => Near($"{o.First.Key}, with a fifth taken back", 0.8 * o.First.MeanOffUsd, o.Second.MeanOffUsd));
    }

    [Fact]
    public void An_old_heater_is_renewed_when_due_and_a_better_one_is_held_against_the_new()
    {
        // set in 2014 for 15 years: due before season 3
        var portfolio = Heater(new DateOnly(2014, 1, 1), OptionTiming.Now);
        var model = HouseModels.Of(portfolio.Houses["h0"], portfolio.Catalogue, new(0.3, 1, 1.1), 2026, FuelKind.Propane).Model!;
        var (old, standard, condensing) = (model.Heaters[0].Efficiency, model.Heaters[0].NewEfficiency, OptionModels.Of(model, portfolio.Options["h0"][0]).Model!.Efficiency);
        var (before, after) = (Of(portfolio, season: 0), Of(portfolio, season: 5));
        double Share(FarmExposure e) => (e.Own.Units - Units(e)) / e.Own.Units;
        static double Units(FarmExposure e) => e.Own.Units - e.Options.Single().YearlyUsd / e.Options.Single().BreakEvenUsdPerUnit!.Value;
        var realised = Share(before) / (1 - old / condensing);
        Assert.InRange(realised, 0.5, 1);
        Assert.Equal(realised * (1 - standard / condensing), Share(after), 1e-3);
        Assert.True(Share(after) < 0.6 * Share(before), $"{Share(before)} of the fuel against the old heater, {Share(after)} against the new");
    }

    [Fact]
    public void An_option_at_renewal_costs_its_premium()
    {
        // due at once: the condensing heater spares the standard one
        var (now, due) = (Of(Heater(new DateOnly(2024, 1, 1), OptionTiming.Now)).Options.Single(), Of(Heater(new DateOnly(2010, 1, 1), OptionTiming.AtHeaterChange)).Options.Single());
        var portfolio = Heater(new DateOnly(2010, 1, 1), OptionTiming.AtHeaterChange);
        var model = HouseModels.Of(portfolio.Houses["h0"], portfolio.Catalogue, new(0.3, 1, 1.1), 2026, FuelKind.Propane).Model!;
        var life = CostsOf(portfolio).LifeYears;
        var rate = portfolio.Set.DiscountRate;
        Near("yearly cost less", model.Heaters[0].RenewalUsd * rate / (1 - Math.Pow(1 + rate, -life)), now.YearlyUsd - due.YearlyUsd);
    }

    [Fact]
    public void Running_is_in_dollars_of_the_season_that_is_asked_as_its_prices_are()
    {
        var portfolio = SmallPortfolio.Of(1);
        var (now, later) = (Of(portfolio).Options.Single(o => o.Key == "curtain-now"), Of(portfolio, season: 5).Options.Single(o => o.Key == "curtain-now"));
        var study = StudyRun.Run(portfolio, 1, null, CancellationToken.None).Result!.Options.Single(o => o.Key == "curtain-now");
        Assert.True(study.Costs.RunningUsd > 0);
        Near("running of season 5 over that of season 0", study.Costs.RunningUsd * (Math.Pow(1 + portfolio.Set.UpkeepGrowth, 5) - 1), later.YearlyUsd - now.YearlyUsd);
    }

    [Fact]
    public void Every_fuel_meets_the_same_heat_with_its_own_heater_at_its_seasonal_efficiency()
    {
        var exposure = Of(SmallPortfolio.Of(1));
        foreach (var (fuel, code) in new[] { (FuelKind.NaturalGas, "power"), (FuelKind.FuelOil, "oilfurnace"), (FuelKind.Electricity, "resistance"), (FuelKind.WoodPellets, "pellet") })
        {
            var way = exposure.Ways.Single(w => w.Cost.Way.Key == $"{fuel}-{code}").Cost;
            var efficiency = Catalogue.BuiltIn.Value(CatalogueKind.Heater, code, "seasonalEfficiency");
            Near($"{fuel}: heat", exposure.HeatKwh.Mean, way.Units * HeatingValues.KwhPerUnit(fuel, way.Way.Unit)!.Value * efficiency);
        }

        Assert.True(exposure.Ways.Single(w => w.Cost.Way.Key == "Electricity-heatpump").Cost.Units < exposure.Ways.Single(w => w.Cost.Way.Key == "Electricity-resistance").Cost.Units);
    }

    [Fact]
    public void Equal_farms_have_their_dear_seasons_together()
    {
        var portfolio = SmallPortfolio.Of(1);
        var costs = Of(portfolio).Own.Usd;
        var joint = JointExposure.Of([costs, costs, costs], portfolio.Set.ReplicateCount);
        Near("one in twenty of three", 3 * Of(portfolio).Own.Cost.P95, joint.Cost.P95);
        Assert.Equal(0, joint.SpreadingGivesUsd, 1e-6);
    }

    [Fact]
    public void Ways_of_one_mean_part_by_the_cash_they_ask_for()
    {
        var exposure = Of(SmallPortfolio.Of(1));
        var (index, set) = (exposure.Ways.Single(w => w.Cost.Way.Key == "index").Cost, exposure.Ways.Single(w => w.Cost.Way.Key == "fixed").Cost);
        Near("mean", index.Cost.Mean, set.Cost.Mean);
        var cash = index.Cost.P90;
        Assert.True(CashAtRisk.Of(index, cash).OverShare > CashAtRisk.Of(set, cash).OverShare && CashAtRisk.Of(index, cash).ShortOneInTwentyUsd > CashAtRisk.Of(set, cash).ShortOneInTwentyUsd);
    }

    [Fact]
    public void A_saving_that_falls_under_a_price_step_is_priced_at_the_step()
    {
        // over 100 gal a month a gallon costs 60 cents less: those are the gallons an option saves first
        var fixedPrice = new ContractFacts { SupplyGroupId = "g", Kind = ContractKind.Fixed, Unit = "gal", PriceUsdPerUnit = 2.4 };
        var (plain, steps) = (Of(SmallPortfolio.Of(1), fixedPrice), Of(SmallPortfolio.Of(1), fixedPrice with { Tiers = [new(100, -0.60)] }));
        Assert.Equal(plain.Own.Units, steps.Own.Units, 1e-6);
        foreach (var option in plain.Options)
        {
            var stepped = steps.Options.Single(o => o.Key == option.Key);
            Assert.True(stepped.MeanOffUsd < option.MeanOffUsd && stepped.MeanOffUsd > option.MeanOffUsd * 1.8 / 2.4 - 1e-6, $"{option.Key}: {option.MeanOffUsd:0} at one price, {stepped.MeanOffUsd:0} by steps");
        }
    }

    private static Portfolio Heater(DateOnly installedOn, OptionTiming timing)
    {
        var p = SmallPortfolio.Of(1);
        return p with
        {
            Houses = new Dictionary<string, HouseFacts> { ["h0"] = p.Houses["h0"] with { Heaters = [new("gravity", FuelKind.Propane, 130, 0.62, installedOn)] } },
            Options = new Dictionary<string, IReadOnlyList<OptionFacts>> { ["h0"] = [new("condensing", ["condensing"], timing)] },
        };
    }

    private static Engine.Economics.OptionCosts CostsOf(Portfolio portfolio) => StudyRun.Run(portfolio, 1, null, CancellationToken.None).Result!.Options.Single().Costs;

    private static void Near(string what, double expected, double found) => Assert.True(Math.Abs(expected - found) <= 1e-6 * Math.Abs(expected) + 1e-9, $"{what}: {expected:R} expected, {found:R} found");

    private static FarmExposure Of(Portfolio portfolio, ContractFacts? contract = null, IReadOnlyList<string>? houses = null, int season = 0)
    {
        var (futures, faults) = StudyFutures.Of(portfolio);
        Assert.Empty(faults);
        IReadOnlyList<NamedContract> contracts = contract is null ? [] : [new("c", "in force", contract)];
        return FarmExposure.Of(portfolio, futures!, futures!.Blocks(1, TestContext.Current.CancellationToken), houses ?? [.. portfolio.Houses.Keys], contracts, season).Exposure!;
    }
}
