using FarmPortfolio.Engine.Lending;
using FarmPortfolio.Host.Studies;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>One part of a book.</summary>
[Name("BookShare")]
public sealed record BookShareView(string Name, int Cases, double AmountUsd, double ExpectedUsd, double TailUsd);

/// <summary>A case in a book.</summary>
[Name("BookCase")]
public sealed record BookCaseView(LoanCaseView LoanCase, double ExpectedUsd, double DefaultShare);

/// <summary>A case that a book leaves out, and why.</summary>
[Name("BookLeftOut")]
public sealed record BookLeftOutView([property: Id] string CaseId, string Name, string Message, string Remedy);

/// <summary>Losses of one kind of futures.</summary>
[Name("BookLosses")]
public sealed record BookLossesView(double MeanUsd, double P95Usd, double P95HalfWidth, double P99Usd, double P99HalfWidth, double NoLossShare, double MissTogetherMiddle, double MissTogetherOneInTen)
{
    internal static BookLossesView Of(LoanBook b) => new(b.MeanUsd, b.P95.Usd, b.P95.HalfWidth, b.P99.Usd, b.P99.HalfWidth, b.NoLossShare, b.MissTogether.P50, b.MissTogether.P90);
}

/// <summary>Loans together on common futures. Modelled, not a credit score.</summary>
[Name("LoanBook")]
public sealed record LoanBookView(
    double AmountUsd, BookLossesView Drawn, double AddedP99Usd, double LossesToUsd, IEnumerable<int> LossCounts, int FuturesCount, [property: Complexity(1, 20)] IEnumerable<BookCaseView> Cases, IEnumerable<BookShareView> ByFuel,
    IEnumerable<BookShareView> ByPlace, IEnumerable<BookShareView> ByRetrofit, IEnumerable<BookLeftOutView> LeftOut);

/// <summary>What a case adds to the book of all that are not declined: one future in a hundred loses more.</summary>
[Name("CaseInBook")]
public sealed record CaseInBookView(int Others, double WithP99Usd, double WithoutP99Usd);

/// <summary>A case among the others.</summary>
public sealed partial class LoanCaseView
{
    /// <summary>What it adds to the book; null where it has no answer.</summary>
    public CaseInBookView? InBook([FromServices] LendingRuns runs, CancellationToken cancellationToken = default)
    {
        var all = register.LoanCases.Values.Where(c => c.Facts.State != LoanState.Declined || c.Id == item.Id).Select(c => c.Id);
        var (cases, _) = Query.BookCases(register, runs, all, StressKind.AsDrawn, cancellationToken);
        var others = cases.Where(c => c.Id != item.Id).ToList();
        return others.Count == cases.Count ? null : new(others.Count, LoanBook.Of(cases).P99.Usd, others.Count == 0 ? 0 : LoanBook.Of(others).P99.Usd);
    }
}

/// <summary>Books of loans.</summary>
public sealed partial class Query
{
    /// <summary>Some cases as a book, of all that are not declined where none are named. Null where no case has an answer.</summary>
    public static LoanBookView? LoanBook([FromServices] Register register, [FromServices] LendingRuns runs, [Id] IEnumerable<string>? caseIds = null, CancellationToken cancellationToken = default)
    {
        var (cases, left) = BookCases(register, runs, caseIds, StressKind.AsDrawn, cancellationToken);
        if (cases.Count == 0)
        {
            return null;
        }

        var book = Engine.Lending.LoanBook.Of(cases);
        IEnumerable<BookShareView> Shares(IReadOnlyList<BookShare> shares) => shares.Select(s => new BookShareView(s.Name, s.Cases, s.AmountUsd, s.ExpectedUsd, s.TailUsd));
        return new(
            book.AmountUsd, BookLossesView.Of(book), book.AddedP99Usd, book.Losses.To, book.Losses.Counts, cases[0].Basis.Paths,
            cases.Select(c => new BookCaseView(new(register, register.LoanCases[c.Id]), book.ExpectedUsd[c.Id], book.DefaultShare[c.Id])), Shares(book.ByFuel), Shares(book.ByPlace), Shares(book.ByRetrofit), left);
    }

    /// <summary>The same book when fuel goes wrong for two winters everywhere at once: cheap and mild, or dear and hard. Null where no case has an answer, or for any other stress.</summary>
    public static BookLossesView? LoanBookStress([FromServices] Register register, [FromServices] LendingRuns runs, StressKind kind, [Id] IEnumerable<string>? caseIds = null, CancellationToken cancellationToken = default) =>
        kind is StressKind.CheapAndMild or StressKind.DearAndHard && BookCases(register, runs, caseIds, kind, cancellationToken).Cases is { Count: > 0 } cases ? BookLossesView.Of(Engine.Lending.LoanBook.Of(cases)) : null;

    internal static (List<BookCase> Cases, List<BookLeftOutView> Left) BookCases(Register register, LendingRuns runs, IEnumerable<string>? caseIds, StressKind kind, CancellationToken cancel)
    {
        var wanted = caseIds?.ToHashSet(StringComparer.Ordinal);
        var chosen = register.LoanCases.Values.Where(c => wanted is null ? c.Facts.State != LoanState.Declined : wanted.Contains(c.Id)).OrderBy(c => c.Id, StringComparer.Ordinal).ToList();
        var (cases, left) = (new List<BookCase>(), new List<BookLeftOutView>());
        var first = chosen.Select(c => register.NewestOption(c.Facts.HouseId, c.Facts.OptionKey)?.StartSeason ?? int.MaxValue).DefaultIfEmpty(0).Min();
        foreach (var c in chosen)
        {
            var (basis, _, fault) = register.Basis(runs, c.Facts, kind, first, cancel);
            if (basis is null)
            {
                left.Add(new(c.Id, c.Remarks.Name ?? "unnamed", fault!.Message, fault.Remedy));
                continue;
            }

            var farm = register.Farms.GetValueOrDefault(c.Facts.FarmId);
            cases.Add(new(c.Id, basis, register.NewestOption(c.Facts.HouseId, c.Facts.OptionKey)!.Fuel.ToString(), farm?.Remarks.Place ?? "place not told", LoanOptions.Find(register, c.Facts.HouseId, c.Facts.OptionKey)?.Title ?? c.Facts.OptionKey));
        }

        return (cases, left);
    }
}
