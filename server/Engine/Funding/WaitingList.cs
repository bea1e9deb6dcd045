namespace FarmPortfolio.Engine.Funding;

/// <summary>Where money that came back goes: down the order that was frozen with the decision, never ranked anew.</summary>
public static class WaitingList
{
    /// <summary>Money of a round that can be given again: what was not given at the decision beside the reserve, what came back since.</summary>
    /// <param name="decision">The newest decision of the round.</param>
    /// <param name="awards">Awards of the round.</param>
    /// <returns>US dollars.</returns>
    public static double FreeUsd(RoundDecision decision, IEnumerable<AwardFacts> awards) =>
        Math.Max(0, decision.Round.Rules.AvailableUsd - awards.Sum(a => a.PayableCents) / 100.0);

    /// <summary>The order as it stands after money came back: who gave it back is told as such and not as funded.</summary>
    /// <param name="decision">The newest decision of the round.</param>
    /// <param name="awards">Awards of the round.</param>
    /// <returns>Rows in the frozen order.</returns>
    public static IReadOnlyList<DecidedRow> Standing(RoundDecision decision, IReadOnlyCollection<AwardFacts> awards) =>
        [.. decision.Order.Select(r => r.Funded && awards.LastOrDefault(a => a.HouseId == r.HouseId) is { ReturnedOn: { } on } back ? r with { Funded = false, Why = $"its money went back on {on:yyyy-MM-dd}: {back.ReturnedReason}" } : r)];

    /// <summary>The next on the list that the money reaches.</summary>
    /// <param name="decision">The newest decision of the round.</param>
    /// <param name="awards">Awards of the round.</param>
    /// <param name="today">Day.</param>
    /// <param name="applicantOf">Who stands behind a house: farms whose caps count as one, with the grants that they had before the round.</param>
    /// <returns>The row and the houses passed over for their size or their farm's cap; no row = none, and why.</returns>
    public static (DecidedRow? Next, IReadOnlyList<DecidedRow> PassedOver, string? WhyNone) Next(RoundDecision decision, IReadOnlyCollection<AwardFacts> awards, DateOnly today, Func<string, Applicant> applicantOf)
    {
        if (decision.Round.WaitingUntilOn is { } end && today > end)
        {
            return (null, [], $"the list ended on {end:yyyy-MM-dd}");
        }

        var free = FreeUsd(decision, awards);
        var had = awards.GroupBy(a => applicantOf(a.HouseId).RelatedKey).ToDictionary(g => g.Key, g => g.Sum(a => a.PayableCents) / 100.0);
        var passed = new List<DecidedRow>();
        var capped = 0;
        foreach (var row in decision.Order.Where(r => !r.Funded && awards.All(a => a.HouseId != r.HouseId)))
        {
            var applicant = applicantOf(row.HouseId);
            var room = decision.Round.Rules.FarmCapUsd - applicant.EarlierGrantsUsd - had.GetValueOrDefault(applicant.RelatedKey);
            if (row.GrantUsd <= free && row.GrantUsd <= room)
            {
                return (row, passed, null);
            }

            capped += row.GrantUsd <= free ? 1 : 0;
            passed.Add(row);
        }

        return (null, passed, passed.Count == 0 ? "nobody waits"
            : capped == 0 ? $"${free:#,0} is free, and each of the {passed.Count} who wait asks for more"
            : $"${free:#,0} is free, and each of the {passed.Count} who wait asks for more or would pass the cap of its farm");
    }
}
