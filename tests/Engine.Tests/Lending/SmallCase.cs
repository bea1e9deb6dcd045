using FarmPortfolio.Engine.Lending;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Engine.Tests.Studies;

namespace FarmPortfolio.Engine.Tests.Lending;

/// <summary>Loan cases over the small portfolio: two houses on propane, 4 x 64 futures.</summary>
internal static class SmallCase
{
    public static LoanCaseFacts Terms(string house = "h0") => new()
    {
        FarmId = "f",
        HouseId = house,
        OptionKey = "curtain-now",
        AmountCents = 9_000_00,
        FeeCents = 150_00,
        RatePerYear = 0.075,
        TermYears = 7,
        OperatingLineCents = 500_00,
        ReserveCents = 250_00,
    };

    public static RepaymentCapacity Capacity() => RepaymentCapacity.Of(
    [
        new() { FarmId = "f", Year = 2025, NetFarmIncomeCents = 21_000_00, OffFarmIncomeCents = 18_000_00, DepreciationCents = 9_000_00, TermInterestCents = 3_000_00, FamilyLivingCents = 30_000_00, IncomeTaxesCents = 4_000_00, HeatingCents = 9_000_00, TermDebtServiceCents = 8_000_00 },
        new() { FarmId = "f", Year = 2024, NetFarmIncomeCents = 17_000_00, OffFarmIncomeCents = 18_000_00, DepreciationCents = 9_000_00, TermInterestCents = 3_400_00, FamilyLivingCents = 29_000_00, IncomeTaxesCents = 3_000_00, HeatingCents = 8_000_00, TermDebtServiceCents = 8_000_00 },
    ])!;

    public static LoanBasis Basis(Portfolio portfolio, LoanCaseFacts? terms = null, bool farm = true, StressKind kind = StressKind.AsDrawn, int threads = 2)
    {
        terms ??= Terms();
        var (study, faults) = StudyFutures.Of(portfolio);
        Assert.Empty(faults);
        var (laid, futures) = LoanFutures.Of(portfolio, study!, kind, 0);
        var nets = StudySeasons.Of(laid, futures, new HashSet<(string, string)> { (terms.HouseId, terms.OptionKey) }, threads, CancellationToken.None);
        return new(terms, nets.Options[(terms.HouseId, terms.OptionKey)], nets.FarmUsd[terms.FarmId], farm ? Capacity() : null, laid.Set);
    }

    /// <summary>Equal houses, each on a farm and a tank of its own; own noise is what houses, works and farms have of their own.</summary>
    public static Portfolio Equal(int houses, bool ownNoise)
    {
        var p = SmallPortfolio.Of(1, change: s => s with { CommonShare = ownNoise ? s.CommonShare : 1 });
        var ids = Enumerable.Range(0, houses).ToList();
        var defaults = p.Catalogue.Entries.Single(e => e.Kind == CatalogueKind.Default && e.Values.ContainsKey("gradeCSd"));
        var silent = defaults with { Values = new[] { "gradeCSd", "airChangesSdLn" }.ToDictionary(n => n, n => defaults.Values[n] with { Value = 0 }) };
        return p with
        {
            Farms = ids.ToDictionary(i => $"f{i}", _ => p.Farms["f"]),
            Houses = ids.ToDictionary(i => $"h{i}", i => p.Houses["h0"] with { FarmId = $"f{i}", DrawKey = 100 + i, Supplies = [new($"g{i}")] }),
            SupplyGroups = ids.ToDictionary(i => $"g{i}", i => p.SupplyGroups["g"] with { FarmId = $"f{i}" }),
            Options = ids.ToDictionary(i => $"h{i}", _ => p.Options["h0"]),
            Catalogue = ownNoise ? p.Catalogue : p.Catalogue.With([silent]),
        };
    }

    public static LoanBook Book(Portfolio portfolio, int houses, bool farm, long amountUsd = 14_000)
    {
        var cases = new List<BookCase>();
        for (var i = 0; i < houses; i++)
        {
            var terms = Terms($"h{i}") with { FarmId = $"f{i}", AmountCents = 100 * amountUsd, OperatingLineCents = 0, ReserveCents = 0 };
            var basis = Basis(portfolio, terms, farm);
            cases.Add(new($"c{i}", basis, "propane", "a valley", "curtain"));
        }

        return LoanBook.Of(cases);
    }
}
