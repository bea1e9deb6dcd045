using FarmPortfolio.Engine.Lending;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Demo;

/// <summary>Invented statements and loan cases: strong and thin farms, one that gave no statements, fixed and indexed, a grant, a guarantee, a case declined.</summary>
internal static class DemoLoans
{
    /// <summary>Statements and cases.</summary>
    public static IEnumerable<ItemToSave> Items() => Statements().Concat(Cases());

    private static IEnumerable<ItemToSave> Statements()
    {
        // farm, newest year: net farm income, off-farm, depreciation, term interest, living, taxes, heating, debt service; the years before a little lower
        (int Farm, int Years, int[] Usd)[] told =
        [
            (0, 3, [38_000, 20_000, 13_000, 4_200, 36_000, 6_000, 33_400, 9_500]),
            (1, 1, [9_500, 30_000, 5_200, 900, 27_000, 3_100, 9_300, 3_400]),
            (2, 3, [105_000, 0, 42_000, 14_500, 52_000, 18_000, 84_000, 44_000]),
            (5, 3, [190_000, 0, 96_000, 31_000, 70_000, 42_000, 70_000, 98_000]),
            (6, 2, [17_000, 20_000, 8_000, 2_100, 31_000, 3_000, 19_800, 6_200]),
            (13, 3, [66_000, 9_000, 24_000, 8_800, 41_000, 11_000, 47_000, 23_000]),
        ];
        foreach (var (farm, years, usd) in told)
        {
            for (var back = 0; back < years; back++)
            {
                long Cents(int i) => (long)(100 * usd[i] * Math.Pow(0.965, back));
                var year = 2025 - back;
                yield return new(ItemKind.Statement, $"sm_demo{farm:00}{year}", null, new StatementFacts
                {
                    FarmId = $"f_demo{farm:00}",
                    Year = year,
                    NetFarmIncomeCents = Cents(0),
                    OffFarmIncomeCents = Cents(1),
                    DepreciationCents = Cents(2),
                    TermInterestCents = Cents(3),
                    FamilyLivingCents = Cents(4),
                    IncomeTaxesCents = Cents(5),
                    HeatingCents = Cents(6),
                    TermDebtServiceCents = 100L * usd[7],
                }, new($"{DemoFarms.All[farm].Name}, {year}", Note: "invented"));
            }
        }
    }

    private static IEnumerable<ItemToSave> Cases()
    {
        yield return Case(0, 0, "curtain-now", "Night curtain", 8_000, 7, l => l with { DownPaymentCents = 234_000, FeeCents = 20_000, RatePerYear = 0.0725, OperatingLineCents = 2_000_000, ReserveCents = 100_000 });
        yield return Case(1, 0, "curtain-now", "Night curtain", 6_500, 6, l => l with { DownPaymentCents = 163_000, FeeCents = 15_000, RatePerYear = 0.0775, OperatingLineCents = 500_000 });
        yield return Case(2, 0, "curtain-now", "Night curtain, yearly", 14_000, 8, l => Indexed(l) with { DownPaymentCents = 138_400, FeeCents = 35_000, Payments = LoanPayments.Annual, OperatingLineCents = 6_000_000, State = LoanState.Lent });
        yield return Case(3, 1, "curtain-now", "Night curtain", 8_000, 7, l => l with { DownPaymentCents = 234_000, FeeCents = 20_000, RatePerYear = 0.0725, OperatingLineCents = 300_000 });
        yield return Case(5, 0, "curtain-now", "Curtain over the range, with a grant", 46_000, 7, l => Indexed(l) with
        {
            GrantCents = 1_500_000,
            GrantMonths = 8,
            DownPaymentCents = 712_000,
            FeeCents = 110_000,
            Payments = LoanPayments.Seasonal,
            GuaranteeShare = 0.80,
            OperatingLineCents = 12_000_000,
            ReserveCents = 300_000,
            State = LoanState.Lent,
        });
        yield return Case(6, 0, "curtain-now", "Night curtain", 9_000, 7, l => l with { DownPaymentCents = 139_000, FeeCents = 25_000, RatePerYear = 0.079, OperatingLineCents = 800_000 });
        yield return Case(8, 0, "curtain-now", "Curtain, first season deferred", 8_500, 8, l => l with { DownPaymentCents = 230_000, FeeCents = 20_000, RatePerYear = 0.0725, DeferralMonths = 12, OperatingLineCents = 400_000 });
        yield return Case(13, 0, "foam-now", "Foam between the films", 6_800, 5, l => l with { DownPaymentCents = 89_000, FeeCents = 15_000, RatePerYear = 0.075, OperatingLineCents = 4_000_000, State = LoanState.Lent });
        yield return Case(7, 1, "condensing-now", "Condensing heater", 9_000, 10, l => l with { DownPaymentCents = 114_500, FeeCents = 20_000, RatePerYear = 0.0725, State = LoanState.Declined });
    }

    private static LoanCaseFacts Indexed(LoanCaseFacts loan) => loan with { RateKind = RateKind.Indexed, IndexPerYear = 0.043, MarginPerYear = 0.0275 };

    private static ItemToSave Case(int farm, int house, string option, string name, long amountUsd, int years, Func<LoanCaseFacts, LoanCaseFacts> with) => new(ItemKind.LoanCase, $"lc_demo{farm:00}{house}", null, with(new()
    {
        FarmId = $"f_demo{farm:00}",
        HouseId = $"h_demo{farm:00}{house}",
        OptionKey = option,
        AmountCents = 100 * amountUsd,
        TermYears = years,
    }), new($"{name}, {DemoFarms.All[farm].Houses[house].Name}", Note: "invented"));
}
