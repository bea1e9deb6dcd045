using System.Globalization;

namespace FarmPortfolio.Engine.Fuel;

/// <summary>
/// Settles a past season under contracts to the cent, in decimal figures and from what was bought, so that a grower can follow every line with a pocket calculator.
/// Volumes are rounded to a tenth of a unit where a contract has its own unit or a share, prices to $0.0001, each line to the cent with halves away from zero.
/// The season stands alone: nothing is carried into it. It keeps the rules of <see cref="SupplyTerms"/>, but counts real deliveries.
/// </summary>
public static class PastBills
{
    /// <summary>What a season would have cost.</summary>
    /// <param name="season">Season.</param>
    /// <param name="together">Contracts that share the volume; empty = the index.</param>
    /// <param name="byId">Contracts by identifier, for what one rolls into.</param>
    /// <param name="ownIndex">A contract's own index by month in its own unit; null or null for a contract = the season's.</param>
    /// <param name="standBy">Fuel that takes over when the supply is cut.</param>
    /// <returns>The bill, null when a fault stops it, and the faults.</returns>
    public static (PastBill? Bill, IReadOnlyList<Fault> Faults) Of(
        PastSeason season, IReadOnlyList<ContractFacts> together, Func<string, ContractFacts?>? byId = null, Func<ContractFacts, IReadOnlyList<decimal?>?>? ownIndex = null, FuelKind? standBy = null)
    {
        var faults = new List<Fault>(ContractChecks.Together(together));
        var chains = together.Select(c => Chain(c, byId, season.Season)).ToList();
        foreach (var contract in chains.SelectMany(c => c).OfType<ContractFacts>().Distinct())
        {
            faults.AddRange(ContractChecks.Of(contract, season.Fuel, standBy));
        }

        var shares = Enumerable.Range(0, 12).Select(m => chains.Sum(c => c[m]?.VolumeShare ?? (c[m] is null ? 0 : 1))).ToList();
        if (faults.Count == 0 && shares.FindIndex(s => s > 1 + 1e-9) is >= 0 and var crowded)
        {
            faults.Add(new("SHARES", "volumeShare", $"Moved to this season the contracts cover {100 * shares[crowded]:0.#} % of {MonthName(season.Season, crowded)}.", "Look at them one by one: those that follow each other cannot hold for the same season."));
        }

        if (faults.Count > 0)
        {
            return (null, faults);
        }

        var missing = new SortedSet<int>();
        var lines = new List<BillLine>();
        var volume = season.Months.Select(m => m.Units).ToArray();
        Cut(season, volume, chains, missing, lines);
        var rest = (decimal[])volume.Clone();
        var (own, credit) = (0m, 0L);
        foreach (var chain in chains)
        {
            foreach (var contract in chain.OfType<ContractFacts>().Distinct())
            {
                var bill = new PastContract(season, contract, [.. chain.Select(c => ReferenceEquals(c, contract))], ownIndex?.Invoke(contract), missing).Settle(volume, rest);
                lines.AddRange(bill.Lines);
                (own, credit) = (own + bill.StillOwnUnits, credit + bill.CreditCents);
            }
        }

        foreach (var m in Enumerable.Range(0, 12).Where(m => rest[m] > 0))
        {
            var index = season.Index[m] ?? Missing(missing, m);
            lines.Add(new(m, together.Count > 0 ? "fuel that no contract covers, on the index" : "fuel on the index", rest[m], index, Cents(rest[m] * index)));
        }

        return missing.Count > 0
            ? (null, [new("NO_INDEX", "index", $"No price is on record for {string.Join(", ", missing.Select(m => MonthName(season.Season, m)))}.", "Type what the index was in those months, or import a price record that holds them.")])
            : (new([.. lines.OrderBy(l => l.Month ?? 12)], own, credit), []);
    }

    /// <summary>Whole cents, halves away from zero.</summary>
    /// <param name="usd">US dollars.</param>
    /// <returns>Cents.</returns>
    public static long Cents(decimal usd) => (long)Math.Round(100 * usd, MidpointRounding.AwayFromZero);

    /// <summary>A price as a bill prints it, to $0.0001.</summary>
    /// <param name="usd">US dollars a unit.</param>
    /// <returns>Rounded, halves away from zero.</returns>
    public static decimal Price(decimal usd) => Math.Round(usd, 4, MidpointRounding.AwayFromZero);

    /// <summary>How a month of a season is written.</summary>
    /// <param name="season">Year of its July.</param>
    /// <param name="month">Month, July = 0.</param>
    /// <returns>2023-01.</returns>
    public static string MonthName(int season, int month) => FirstDay(season, month).ToString("yyyy-MM", CultureInfo.InvariantCulture);

    private static DateOnly FirstDay(int season, int month) => new DateOnly(season, 7, 1).AddMonths(month);

    private static int SeasonOf(DateOnly day) => day.Month >= 7 ? day.Year : day.Year - 1;

    internal static decimal Missing(SortedSet<int> missing, int month)
    {
        missing.Add(month);
        return 0;
    }

    /// <summary>
    /// The contract of each month. A contract with a first day is moved by whole years so that it starts in the season; without one it runs from its first month.
    /// Where it ends in the season what it rolls into follows, for the rest of it; none = the index.
    /// </summary>
    private static ContractFacts?[] Chain(ContractFacts first, Func<string, ContractFacts?>? byId, int season)
    {
        var months = new ContractFacts?[12];
        int Number(DateOnly day, int years) => 12 * (day.Year + years - season) + day.Month - 7;
        var years = first.StartsOn is { } start ? season - SeasonOf(start) : first.EndsOn is { } last ? Math.Max(0, season - SeasonOf(last)) : 0;
        var from = first.StartsOn is { } day ? Number(day, years) : 0;
        var end = first.EndsOn is { } to ? Number(to, years) : 11;
        var next = first.RollsIntoContractId is { } id ? byId?.Invoke(id) : null;
        for (var m = Math.Max(0, from); m < 12; m++)
        {
            months[m] = m <= end ? first : next == first ? first : next;
        }

        return months;
    }

    /// <summary>Takes what the stand-by fuel burned out of the months with the greatest use.</summary>
    private static void Cut(PastSeason season, decimal[] volume, List<ContractFacts?[]> chains, SortedSet<int> missing, List<BillLine> lines)
    {
        var days = (decimal)chains.SelectMany(c => c).Select(c => c?.InterruptedDays ?? 0).DefaultIfEmpty().Max();
        foreach (var m in Enumerable.Range(0, 12).Where(m => volume[m] > 0).OrderByDescending(m => volume[m]).ThenBy(m => m).ToList())
        {
            if (days <= 0)
            {
                break;
            }

            var first = FirstDay(season.Season, m);
            var inMonth = (decimal)DateTime.DaysInMonth(first.Year, first.Month);
            var taken = Math.Round(volume[m] * Math.Min(1, days / inMonth), 1, MidpointRounding.AwayFromZero);
            var price = (season.StandBy.Count > 0 ? season.StandBy[m] : null) ?? Missing(missing, m);
            lines.Add(new(m, $"stand-by fuel for {Math.Min(days, inMonth):0.#} days, by the heat of a {season.Unit}", taken, price, Cents(taken * price)));
            (volume[m], days) = (volume[m] - taken, days - inMonth);
        }
    }
}
