using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Tests.Fuel;

/// <summary>What an own price lies off its line by: fitted from records of a known kind, drawn apart from the index, and as wide over a season as the closed form says.</summary>
public class PriceScatterTests
{
    private const int Paths = 20_000;
    private static readonly double Kwh = HeatingValues.KwhPerUnit(FuelKind.Propane, "gal")!.Value;
    private static readonly double[] Gallons = [0, 0, 40, 150, 300, 420, 480, 400, 280, 120, 30, 0];
    private static readonly ScenarioSetFacts Set = new() { FirstSeason = 2026, SeasonCount = 3, Seed = 11 };

    /// <summary>Sum over months m and n of V(m) V(n) carry^|m - n|, in gallons.</summary>
    private static double Weight(double carry) => Gallons.Select((v, m) => Gallons.Select((w, n) => v * w * Math.Pow(carry, Math.Abs(m - n))).Sum()).Sum();

    [Theory]
    [InlineData(0, 0.6)]
    [InlineData(2, 0.6)]
    [InlineData(1, 0.0)]
    [InlineData(1, 0.95)]
    public void A_season_on_a_series_of_its_own_is_as_much_wider_as_the_closed_form_says(int season, double carry)
    {
        // own = 0.30 + 0.80 x index, 0.12 $/gal about it; the contract pays it all
        var basis = new SeriesBasis(0.30 / Kwh, 0.80, 60, 0.12 / Kwh, carry);
        var off = Off(new() { SupplyGroupId = "g", Kind = ContractKind.Indexed, Unit = "gal", PriceSeriesId = "s" }, basis, season);
        Spread(off, 0.12 * Math.Sqrt(Weight(carry)));
        // half of the volume under it lies off by half
        Spread(Off(new() { SupplyGroupId = "g", Kind = ContractKind.Indexed, Unit = "gal", PriceSeriesId = "s", VolumeShare = 0.5 }, basis, season), 0.06 * Math.Sqrt(Weight(carry)));
    }

    [Fact]
    public void What_tickets_leave_over_is_one_draw_a_season_so_all_of_its_gallons_lie_off_together()
    {
        var contract = new ContractFacts { SupplyGroupId = "g", Kind = ContractKind.Indexed, Unit = "gal", AdderUsdPerUnit = 0.2, IndexShare = 0.9, ScatterUsdPerUnit = 0.10 };
        Spread(Off(contract, SeriesBasis.Index, 1), 0.10 * Gallons.Sum());
        // on a series of its own both come in, apart
        var both = Off(contract with { PriceSeriesId = "s" }, new(0.30 / Kwh, 0.80, 60, 0.12 / Kwh, 0.5), 1);
        Spread(both, Math.Sqrt(Math.Pow(0.10 * Gallons.Sum(), 2) + 0.81 * 0.0144 * Weight(0.5)));
    }

    [Fact]
    public void The_whole_spread_of_a_season_is_that_of_the_index_and_of_what_lies_off_the_line()
    {
        // an index of its own spread on top, drawn apart: variances add; without the scatter a season in twenty looks too cheap
        var (with, without) = (new double[Paths], new double[Paths]);
        var terms = Terms(new() { SupplyGroupId = "g", Kind = ContractKind.Indexed, Unit = "gal", PriceSeriesId = "s" }, new(0, 1, 60, 0.15 / Kwh, 0.7));
        Each(terms, 0, (path, index, volume, scatter) =>
        {
            var level = 0.2 / Kwh * Noise.Normal(3, NoisePurpose.Offset, 1, path, 0);
            for (var m = 0; m < 12; m++)
            {
                index[m] += level;
            }

            (with[path], without[path]) = (terms.SeasonUsd(0, index, volume, [], new Carried[1], scatter), terms.SeasonUsd(0, index, volume, [], new Carried[1]));
        });
        var (narrow, wide) = (0.2 * Gallons.Sum(), Math.Sqrt(Math.Pow(0.2 * Gallons.Sum(), 2) + 0.0225 * Weight(0.7)));
        Spread(without, narrow, 2 * Gallons.Sum());
        Spread(with, wide, 2 * Gallons.Sum());
        double P95(double[] usd) => usd.Order().ElementAt((int)(0.95 * Paths));
        // normal: 1.645 sd over the mean; a quantile's error is sqrt(p (1 - p) / n) / density, 2.1 sd / sqrt n at one in twenty
        Assert.Equal(2 * Gallons.Sum() + 1.645 * wide, P95(with), 4 * 2.1 * wide / Math.Sqrt(Paths));
    }

    [Fact]
    public void A_cap_and_an_agreed_price_hold_whatever_lies_off()
    {
        var basis = new SeriesBasis(0, 1, 60, 0.5 / Kwh, 0.5);
        var capped = Off(new() { SupplyGroupId = "g", Kind = ContractKind.Capped, Unit = "gal", PriceSeriesId = "s", CapUsdPerUnit = 2.1 }, basis, 0);
        Assert.True(capped.Max() <= 0.1 * Gallons.Sum() + 1e-9, "never over ten cents a gallon more than the index of $2.00");
        Assert.True(capped.Max() > 0.09 * Gallons.Sum());
        Assert.Empty(Terms(new() { SupplyGroupId = "g", Kind = ContractKind.Fixed, Unit = "gal", PriceSeriesId = "s", PriceUsdPerUnit = 2.4 }, basis).Scatter);
        // never under a fifth of the line, however wide
        Assert.Equal(-0.8 * 2 * Gallons.Sum(), Off(new() { SupplyGroupId = "g", Kind = ContractKind.Indexed, Unit = "gal", PriceSeriesId = "s" }, basis with { SdUsdPerKwh = 40 / Kwh, Carry = 0.98 }, 0).Min(), 1e-6);
    }

    [Fact]
    public void Month_by_month_it_costs_what_the_settlement_of_the_season_says()
    {
        var series = new ContractFacts { SupplyGroupId = "g", Kind = ContractKind.Capped, Unit = "gal", PriceSeriesId = "s", CapUsdPerUnit = 2.05, VolumeShare = 0.5, MonthlyFeeUsd = 12, DeliveryFeeUsd = 40, UnitsPerDelivery = 200 };
        var tickets = new ContractFacts { SupplyGroupId = "g", Kind = ContractKind.Indexed, Unit = "gal", ScatterUsdPerUnit = 0.2, AdderUsdPerUnit = 0.1, VolumeShare = 0.3, EndsOn = new(2027, 1, 31) };
        var basis = new SeriesBasis(0.1 / Kwh, 0.9, 60, 0.15 / Kwh, 0.5);
        var terms = SupplyTerms.Of([series, tickets], null, FuelKind.Propane, null, Set.FirstSeason, Set.SeasonCount, basisOf: c => (c.PriceSeriesId is null ? SeriesBasis.Index : basis, null)).Terms!;
        Assert.Equal((false, true, 2), (terms.IsMonthly, terms.IsPricedByMonth, terms.Scatter.Count));
        var prices = new double[12];
        foreach (var season in new[] { 0, 1 })
        {
            Each(terms, season, (path, index, volume, scatter) =>
            {
                terms.MonthPrices(season, index, scatter, prices);
                Assert.Equal(terms.SeasonUsd(season, index, volume, [], new Carried[2], scatter), terms.FeesUsd(season) + prices.Zip(volume, (p, v) => p * v).Sum(), 1e-7);
            });
        }
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.6)]
    [InlineData(0.9)]
    public void The_carry_of_a_known_residual_is_found_again(double carry)
    {
        // 400 records of 60 months, index and residual drawn apart: the mean found lies within 4 standard errors, 1.5 / 60 let for what is left of the bias
        const int Records = 400, Months = 60;
        var found = new double[Records];
        var noise = OwnPriceNoise.Of(new() { FirstSeason = 2000, SeasonCount = 5, Seed = 4 }, [new("a", 1, carry, false)])!;
        var residual = new double[Months];
        for (var r = 0; r < Records; r++)
        {
            noise.Fill(r, residual);
            var own = Series(i => 0.3 + 0.8 * Index(r, i) + 0.05 * residual[i]);
            var (basis, fault) = SeriesBasis.Of(own, Series(i => Index(r, i)), null, FuelKind.Propane);
            Assert.Null(fault);
            found[r] = basis!.Carry;
        }

        var mean = found.Average();
        var se = Math.Sqrt(found.Sum(f => (f - mean) * (f - mean)) / (Records - 1) / Records);
        // at 0 those that swing back count as 0: half of a normal of sd 1/sqrt 60 and the correction of 1/60
        var (expected, bias) = carry == 0 ? (0.052 + 0.5 / Months, 0.01) : (carry, 2.5 / Months);
        Assert.InRange(mean, expected - 4 * se - bias, expected + 4 * se + bias);
        static PriceSeriesFacts Series(Func<int, double> of) => new() { Fuel = FuelKind.Propane, Market = PriceMarket.Retail, Class = PriceClass.RetailFuel, Unit = "gal", FirstMonthOn = new(2018, 1, 1), UsdPerUnit = [.. Enumerable.Range(0, Months).Select(i => (double?)of(i))] };
        static double Index(int record, int month) => 2 + 0.3 * Noise.Normal(9, NoisePurpose.Offset, record, 0, month);
    }

    [Fact]
    public void Contracts_on_the_same_series_lie_off_together_and_others_apart()
    {
        double[] Draw(string key, int path)
        {
            var drawn = new double[36];
            OwnPriceNoise.Of(Set, [new(key, 1, 0.5, false)])!.Fill(path, drawn);
            return drawn;
        }

        Assert.Equal(Draw("series s", 5), Draw("series s", 5));
        var cross = Enumerable.Range(0, 4000).Average(p => Draw("series s", p)[7] * Draw("series t", p)[7]);
        Assert.InRange(cross, -4 / Math.Sqrt(4000), 4 / Math.Sqrt(4000));
        Assert.Null(OwnPriceNoise.Of(Set, []));
    }

    [Fact]
    public void A_spread_belongs_to_a_price_on_the_index_and_is_not_negative()
    {
        var indexed = new ContractFacts { SupplyGroupId = "g", Kind = ContractKind.Indexed, Unit = "gal", ScatterUsdPerUnit = 0.1 };
        Assert.Empty(ContractChecks.Of(indexed, FuelKind.Propane));
        Assert.Contains(ContractChecks.Of(indexed with { ScatterUsdPerUnit = -0.1 }, FuelKind.Propane), f => f is { Code: "OUT_OF_RANGE", Field: "scatterUsdPerUnit" });
        Assert.Contains(ContractChecks.Of(indexed with { Kind = ContractKind.Fixed, PriceUsdPerUnit = 2 }, FuelKind.Propane), f => f is { Code: "SCATTER", Field: "scatterUsdPerUnit" });
    }

    /// <summary>Mean and spread within 4 standard errors.</summary>
    private static void Spread(double[] usd, double sd, double mean = 0)
    {
        var (found, n) = (usd.Average(), usd.Length);
        Assert.InRange(found, mean - 4 * sd / Math.Sqrt(n), mean + 4 * sd / Math.Sqrt(n));
        Assert.InRange(Math.Sqrt(usd.Sum(u => (u - found) * (u - found)) / (n - 1)), sd * (1 - 4 / Math.Sqrt(2.0 * n)), sd * (1 + 4 / Math.Sqrt(2.0 * n)));
    }

    /// <summary>What a season costs over what it costs on the line, path by path; the index is $2.00 a gallon.</summary>
    private static double[] Off(ContractFacts contract, SeriesBasis basis, int season)
    {
        var (off, terms) = (new double[Paths], Terms(contract, basis));
        Each(terms, season, (path, index, volume, scatter) => off[path] = terms.SeasonUsd(season, index, volume, [], new Carried[1], scatter) - terms.SeasonUsd(season, index, volume, [], new Carried[1]));
        return off;
    }

    private static SupplyTerms Terms(ContractFacts contract, SeriesBasis basis)
    {
        var (terms, faults) = SupplyTerms.Of([contract], null, FuelKind.Propane, null, Set.FirstSeason, Set.SeasonCount, basisOf: _ => (basis, null));
        Assert.Empty(faults);
        Assert.Equal(terms!.Scatter.Count == 0, terms.IsMonthly);
        return terms;
    }

    private static void Each(SupplyTerms terms, int season, Action<int, double[], double[], double[]> told)
    {
        var noise = OwnPriceNoise.Of(Set, terms.Scatter)!;
        var (drawn, volume) = (new double[noise.Length], Gallons.Select(g => g * Kwh).ToArray());
        for (var path = 0; path < Paths; path++)
        {
            noise.Fill(path, drawn);
            told(path, [.. Enumerable.Repeat(2 / Kwh, 12)], volume, drawn[(season * noise.SeasonLength)..((season + 1) * noise.SeasonLength)]);
        }
    }
}
