using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Lending;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Host.Storage.Items;
using FarmPortfolio.Host.Studies;

namespace FarmPortfolio.Host.Api;

/// <summary>Loan cases and statements of a co-op.</summary>
public sealed partial class Register
{
    private IReadOnlyDictionary<string, Item<LoanCaseFacts>>? loanCases;
    private ILookup<string, Item<StatementFacts>>? statements;

    /// <summary>Loan cases.</summary>
    public IReadOnlyDictionary<string, Item<LoanCaseFacts>> LoanCases => loanCases ??= Items.All<LoanCaseFacts>(Viewer, Coop.Id, ItemKind.LoanCase).ToDictionary(c => c.Id);

    /// <summary>Statements by farm, newest first.</summary>
    public ILookup<string, Item<StatementFacts>> Statements => statements ??= Items.All<StatementFacts>(Viewer, Coop.Id, ItemKind.Statement).OrderByDescending(s => s.Facts.Year).ToLookup(s => s.Facts.FarmId);

    /// <summary>What a case is judged on: the newest study and the farm's statements as they are now.</summary>
    /// <param name="runs">Seasons of options.</param>
    /// <param name="loan">Terms, already checked.</param>
    /// <param name="kind">As drawn, or a stress of fuel.</param>
    /// <param name="firstSeason">Season of the study in which such a stress begins; null = with the loan.</param>
    /// <param name="cancel">Stops it.</param>
    /// <returns>The basis and seasons, or why there are none.</returns>
    public (LoanBasis? Basis, OptionSeasons? Seasons, Fault? Fault) Basis(LendingRuns runs, LoanCaseFacts loan, StressKind kind, int? firstSeason, CancellationToken cancel)
    {
        if (Newest is not { } study)
        {
            return (null, null, new("NO_STUDY", null, "No study is done yet, so there are no futures to judge the loan on.", "Run a study."));
        }

        if (study.NumbersVersion != StudyRun.NumbersVersion)
        {
            return (null, null, new("OLD_STUDY", null, $"Study {study.Number} was made by another version of the numbers and cannot be reckoned on from.", "Run a new study."));
        }

        if (NewestOption(loan.HouseId, loan.OptionKey) is not { } option)
        {
            return (null, null, new("NOT_STUDIED", "optionKey", $"Study {study.Number} has no figures for this option.", "Choose an option of the house that is studied, or run a new study."));
        }

        if (LoanChecks.Horizon(loan, option.StartSeason, NewestResult!.CostBySeason.Count) is { } late)
        {
            return (null, null, late);
        }

        // the cases of the co-op are mostly asked for together: one draw of the futures serves them all
        var first = firstSeason ?? option.StartSeason;
        var together = kind == StressKind.AsDrawn || firstSeason is not null ? LoanCases.Values.Where(c => c.Facts.State != LoanState.Declined && NewestOption(c.Facts.HouseId, c.Facts.OptionKey) is not null).Select(c => (c.Facts.HouseId, c.Facts.OptionKey)) : [];
        return runs.Of(Viewer, study, kind, first, [.. together.Append((loan.HouseId, loan.OptionKey)).Distinct()], cancel).GetValueOrDefault((loan.HouseId, loan.OptionKey)) is { } seasons
            ? (new(loan, seasons.Net, seasons.FarmUsd, RepaymentCapacity.Of(Statements[loan.FarmId].Select(s => s.Facts)), seasons.Set), seasons, null)
            : (null, null, new("NOT_STUDIED", "optionKey", $"Study {study.Number} left this option out.", "See why on the Studies page."));
    }
}
