using FarmPortfolio.Engine.Economics;

namespace FarmPortfolio.Engine.Lending;

/// <summary>A case in a book.</summary>
/// <param name="Id">Case.</param>
/// <param name="Basis">What it is judged on.</param>
/// <param name="Fuel">Fuel of the house.</param>
/// <param name="Place">Where the farm stands.</param>
/// <param name="Retrofit">What the money pays for.</param>
public sealed record BookCase(string Id, LoanBasis Basis, string Fuel, string Place, string Retrofit);

/// <summary>One part of a book by some mark.</summary>
/// <param name="Name">Mark.</param>
/// <param name="Cases">Cases.</param>
/// <param name="AmountUsd">Lent.</param>
/// <param name="ExpectedUsd">Its mean loss.</param>
/// <param name="TailUsd">Its mean loss in the hundredth of the futures in which the book loses most.</param>
public sealed record BookShare(string Name, int Cases, double AmountUsd, double ExpectedUsd, double TailUsd);

/// <summary>
/// Loans together, on one set of futures: winters, prices, half of the errors of saving and of the margin of sales are common to all on a path, so losses come
/// together. Every figure of the sum is read from the sum, path by path, never added up from the cases' own.
/// </summary>
public sealed record LoanBook
{
    private const int Bins = 48;

    /// <summary>Lent in all, US dollars.</summary>
    public required double AmountUsd { get; init; }

    /// <summary>Mean loss.</summary>
    public required double MeanUsd { get; init; }

    /// <summary>Half of its 95 % interval.</summary>
    public required double MeanHalfWidth { get; init; }

    /// <summary>One future in twenty loses more, with half of its 95 % interval.</summary>
    public required (double Usd, double HalfWidth) P95 { get; init; }

    /// <summary>One future in a hundred loses more.</summary>
    public required (double Usd, double HalfWidth) P99 { get; init; }

    /// <summary>What the cases' own 99th percentiles add up to: more than the book's, unless all fall together.</summary>
    public required double AddedP99Usd { get; init; }

    /// <summary>Share of futures without a loss.</summary>
    public required double NoLossShare { get; init; }

    /// <summary>Losses above zero, counted.</summary>
    public required Histogram Losses { get; init; }

    /// <summary>Most cases that miss their payment from savings in one and the same season, by path.</summary>
    public required Distribution MissTogether { get; init; }

    /// <summary>Mean loss of each case, by its identifier.</summary>
    public required IReadOnlyDictionary<string, double> ExpectedUsd { get; init; }

    /// <summary>Share of futures in which each case defaults.</summary>
    public required IReadOnlyDictionary<string, double> DefaultShare { get; init; }

    /// <summary>By fuel.</summary>
    public required IReadOnlyList<BookShare> ByFuel { get; init; }

    /// <summary>By place.</summary>
    public required IReadOnlyList<BookShare> ByPlace { get; init; }

    /// <summary>By retrofit.</summary>
    public required IReadOnlyList<BookShare> ByRetrofit { get; init; }

    /// <summary>The book's loss by path.</summary>
    public required IReadOnlyList<double> LossUsd { get; init; }

    /// <summary>Puts cases together.</summary>
    /// <param name="cases">Cases, at least one, on the same futures.</param>
    /// <returns>The book.</returns>
    public static LoanBook Of(IReadOnlyList<BookCase> cases)
    {
        var (replicates, paths) = (cases[0].Basis.Set.ReplicateCount, cases[0].Basis.Paths);
        var found = cases.OrderBy(c => c.Id, StringComparer.Ordinal).Select(c => (Case: c, Shortfall: Shortfall.Of(c.Basis.Loan, LoanMoney.Of(c.Basis, new()), LoanSchedule.Of(c.Basis.Loan, c.Basis.Loan.AmountUsd)))).ToList();
        var sum = new double[paths];
        foreach (var (_, shortfall) in found)
        {
            for (var p = 0; p < paths; p++)
            {
                sum[p] += shortfall.LossUsd[p];
            }
        }

        var whole = Distribution.Of(sum, replicates, worstIsHigh: true);
        var tail = Enumerable.Range(0, paths).OrderByDescending(p => sum[p]).ThenBy(p => p).Take(Math.Max(1, paths / 100)).ToArray();
        IReadOnlyList<BookShare> By(Func<BookCase, string> mark) =>
        [
            .. found.GroupBy(f => mark(f.Case)).Select(g => new BookShare(
                g.Key, g.Count(), g.Sum(f => f.Case.Basis.Loan.AmountUsd), g.Sum(f => f.Shortfall.LossUsd.Sum() / paths), g.Sum(f => tail.Sum(p => f.Shortfall.LossUsd[p]) / tail.Length)))
                .OrderByDescending(s => s.AmountUsd).ThenBy(s => s.Name, StringComparer.Ordinal),
        ];
        return new()
        {
            AmountUsd = found.Sum(f => f.Case.Basis.Loan.AmountUsd),
            MeanUsd = whole.Mean,
            MeanHalfWidth = whole.HalfWidth,
            P95 = Shares.Quantile(sum, replicates, 0.95),
            P99 = Shares.Quantile(sum, replicates, 0.99),
            AddedP99Usd = found.Sum(f => Shares.Quantile(f.Shortfall.LossUsd, replicates, 0.99).Value),
            NoLossShare = (double)sum.Count(l => l <= 0) / paths,
            Losses = Counted(sum),
            MissTogether = Distribution.Of(Together([.. found.Select(f => (f.Case.Basis.Net.StartSeason, f.Shortfall.Missed))], paths, cases[0].Basis.Set.SeasonCount), replicates, worstIsHigh: true),
            ExpectedUsd = found.ToDictionary(f => f.Case.Id, f => f.Shortfall.LossUsd.Sum() / paths),
            DefaultShare = found.ToDictionary(f => f.Case.Id, f => (double)f.Shortfall.DefaultSeason.Count(s => s >= 0) / paths),
            ByFuel = By(c => c.Fuel),
            ByPlace = By(c => c.Place),
            ByRetrofit = By(c => c.Retrofit),
            LossUsd = sum,
        };
    }

    private static double[] Together(List<(int Start, uint[] Missed)> cases, int paths, int seasons)
    {
        var most = new double[paths];
        for (var p = 0; p < paths; p++)
        {
            for (var s = 0; s < seasons; s++)
            {
                most[p] = Math.Max(most[p], cases.Count(c => s >= c.Start && s - c.Start < 32 && (c.Missed[p] >> (s - c.Start) & 1) == 1));
            }
        }

        return most;
    }

    private static Histogram Counted(double[] losses)
    {
        var (most, counts) = (Math.Max(1, losses.Max()), new int[Bins]);
        foreach (var loss in losses.Where(l => l > 0))
        {
            counts[Math.Min(Bins - 1, (int)(Bins * loss / most))]++;
        }

        return new(0, most, counts);
    }
}
