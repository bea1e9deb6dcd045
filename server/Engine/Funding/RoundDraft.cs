using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Engine.Funding;

/// <summary>A round as it would be decided now.</summary>
public static class RoundDraft
{
    /// <summary>Puts a decision together from a study under a round's rules.</summary>
    /// <param name="result">The study's result, single futures at hand.</param>
    /// <param name="round">The round.</param>
    /// <param name="applicantOf">Who stands behind a house.</param>
    /// <param name="titleOf">Plain name of an option by house and key.</param>
    /// <returns>The decision; what names the round, the study and the day is the caller's to fill in.</returns>
    public static RoundDecision Of(StudyResult result, FundingRoundFacts round, Func<string, Applicant> applicantOf, Func<string, string, string> titleOf)
    {
        var rules = round.Rules;
        var order = FundingOrder.Of(result, applicantOf, rules);
        var rows = order.Rows.Select(r => Row(result.Options[r.Index], r, rules, applicantOf, titleOf)).ToList();
        var measures = FundingOrder.ByMeasure(result, applicantOf, rules);
        return new()
        {
            Round = round,
            Futures = result.Futures,
            Order = rows,
            Out = [.. order.NotEligible.Select(n => (O: result.Options[n.Index], n.Why, n.Rule)).OrderByDescending(n => n.O.SavingUsd.Mean)
                .Select(n => new DecidedOut(n.O.HouseId, applicantOf(n.O.HouseId).FarmId, n.O.Key, titleOf(n.O.HouseId, n.O.Key), n.Why, n.Rule))],
            Sums = new(
                Spread.Of(order.SavingUsd), order.WorstTenthUsd, rows.Where(r => r.Funded).Sum(r => r.HeatSavedKwh ?? 0), rows.Where(r => r.Funded).Sum(r => r.Co2SavedKg ?? 0),
                order.NextAddsUsd, order.LastBoughtUsd, order.GroupsCostUsd, order.HeldUsd),
            Groups = order.Groups,
            Overrides = order.Overrides,
            Measures = [.. Others(result, measures, rules.Merit)],
            Switches = [.. Switches(rows, rules, order.HeldUsd)],
        };
    }

    private static DecidedRow Row(OptionResult o, FundingRow r, FundingRules rules, Func<string, Applicant> applicantOf, Func<string, string, string> titleOf) => new()
    {
        HouseId = o.HouseId,
        FarmId = applicantOf(o.HouseId).FarmId,
        OptionKey = o.Key,
        Title = titleOf(o.HouseId, o.Key),
        Funded = r.Funded,
        Pinned = r.Pinned,
        GrantUsd = r.GrantUsd,
        AskedUsd = r.AskedUsd,
        OutlayUsd = o.OutlayUsd,
        EligibleUsd = r.EligibleUsd,
        SavingUsd = Spread.Of(o.SavingUsd),
        HeatSavedKwh = o.HeatSavedKwh,
        FuelSavedKwh = o.FuelSavedKwh,
        Co2SavedKg = o.Co2SavedKg,
        Payback = PaybackRange.Of(o.Lasting, rules.PaybackSeasons),
        LossShare = o.LossShare,
        Grade = o.Grade,
        FundedShare = r.FundedShare,
        MeritPerGrantUsd = r.MeritPerGrantUsd,
        Groups = r.Groups,
        Conditions = r.Conditions,
        Why = r.Why,
    };

    private static IEnumerable<OtherMeasure> Others(StudyResult result, IReadOnlyList<MeasureOrder> measures, Merit chosen)
    {
        HashSet<string> Funded(MeasureOrder m) => [.. m.Places.Where(p => p.Funded).Select(p => $"{result.Options[p.Index].HouseId}~{result.Options[p.Index].Key}")];
        var now = Funded(measures.Single(m => m.Merit == chosen));
        return measures.Where(m => m.Merit != chosen).Select(m =>
        {
            var then = Funded(m);
            return new OtherMeasure(m.Merit, m.SavingUsd, [.. then.Except(now).Order(StringComparer.Ordinal)], [.. now.Except(then).Order(StringComparer.Ordinal)]);
        });
    }

    private static IEnumerable<Switch> Switches(List<DecidedRow> rows, FundingRules rules, double held)
    {
        var funded = rows.Where(r => r.Funded && !r.Pinned).ToList();
        if (funded.MinBy(r => r.Payback!.PaidShare) is { } least && least.Payback!.PaidShare < 1)
        {
            yield return new(SwitchKind.Confidence, least.Payback.PaidShare, least.HouseId);
        }

        if (rows.FirstOrDefault(r => !r.Funded) is not { } next)
        {
            yield break;
        }

        var left = rules.AvailableUsd - held - rows.Where(r => r.Funded).Sum(r => r.GrantUsd);
        if (next.GrantUsd > left && rules.ReserveShare < 1)
        {
            yield return new(SwitchKind.Budget, rules.BudgetUsd + (next.GrantUsd - left) / (1 - rules.ReserveShare), next.HouseId);
        }

        if (funded.Count > 0 && funded[^1] is { MeritPerGrantUsd: > 0 } last && next.MeritPerGrantUsd < last.MeritPerGrantUsd)
        {
            yield return new(SwitchKind.Delivery, next.MeritPerGrantUsd!.Value / last.MeritPerGrantUsd.Value, last.HouseId);
        }
    }
}
