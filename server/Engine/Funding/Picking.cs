namespace FarmPortfolio.Engine.Funding;

/// <summary>What a sum of money is given to.</summary>
/// <param name="Chosen">Options funded, in the order in which they were taken.</param>
/// <param name="Skipped">Those whose turn came while less money was left than they ask, and for which smaller ones were taken: what was left then, by house.</param>
/// <param name="HeldUsd">Money kept for groups that cannot use it.</param>
internal sealed record Picked(List<Candidate> Chosen, Dictionary<string, double> Skipped, double HeldUsd);

/// <summary>Best next step by added merit a grant dollar, at most one option a house; a dearer option of a house already in is an added step.</summary>
internal static class Picking
{
    /// <summary>The options alone.</summary>
    public static List<Candidate> Chosen(List<Candidate> candidates, FundingRules rules, double money, Func<Candidate, double> merit) => Of(candidates, rules, money, merit).Chosen;

    /// <summary>Gives a sum away: without regard to groups where that meets every minimum, otherwise each group's own best first until it has its share.</summary>
    public static Picked Of(List<Candidate> candidates, FundingRules rules, double money, Func<Candidate, double> merit)
    {
        var lots = new Lots(candidates, merit);
        var free = new Purse(lots, rules, money);
        free.Pinned();
        free.Fill(_ => true, () => false);
        var wanting = rules.Groups.Where(g => g.MinimumShare > 0).ToList();
        if (wanting.All(g => free.Given(g.Name) >= g.MinimumShare * money))
        {
            return free.Picked(0);
        }

        var purse = new Purse(lots, rules, money);
        purse.Pinned();
        var held = 0.0;
        foreach (var g in wanting)
        {
            var least = g.MinimumShare * money;
            purse.Fill(c => c.Groups.Contains(g.Name), () => purse.Given(g.Name) >= least);
            held += rules.GroupMoneyHeld ? Math.Max(0, least - purse.Given(g.Name)) : 0;
        }

        purse.Hold(held);
        purse.Fill(_ => true, () => false);
        return purse.Picked(held);
    }
}
