namespace FarmPortfolio.Host.Storage.Kinds;

/// <summary>All kinds of items, those that are pointed at before those that point.</summary>
internal static class KindTables
{
    /// <summary>In the order in which their rows can be written.</summary>
    public static IReadOnlyList<KindTable> All { get; } =
    [
        new WeatherStationTable(), new PriceSeriesTable(), new CatalogueEntryTable(), new ScenarioSetTable(), new FarmTable(), new SupplyGroupTable(),
        new HouseTable(), new FuelRecordTable(), new ContractTable(), new OptionSetTable(), new QuoteTable(),
        new TrialTable(), new EvidenceTable(), new StatementTable(), new LoanCaseTable(), new FundingRoundTable(), new AwardTable(),
    ];

    /// <summary>The table of a kind.</summary>
    /// <param name="kind">Kind.</param>
    /// <returns>Its table.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such kind.</exception>
    public static KindTable Of(string kind) => All.FirstOrDefault(t => t.Kind == kind) ?? throw new ArgumentOutOfRangeException(nameof(kind), kind, "no such kind of item");

    /// <summary>Place of a kind in the order of writing.</summary>
    /// <param name="kind">Kind.</param>
    /// <returns>From 0.</returns>
    public static int Order(string kind) => Enumerable.Range(0, All.Count).First(i => All[i].Kind == kind);
}
