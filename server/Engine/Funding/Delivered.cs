namespace FarmPortfolio.Engine.Funding;

/// <summary>
/// What awards delivered of what they promised: sums of energy over sums of energy. What is not verified stays in the denominator: at nothing for the low
/// bound, at all that was promised for the high one; what was returned counts as nothing in both.
/// </summary>
/// <param name="Awards">Awards with a promise.</param>
/// <param name="VerifiedAwards">Of these verified.</param>
/// <param name="Share">Verified over promised, of those verified; null = none is.</param>
/// <param name="Low">Share of all that was promised if the rest delivers nothing.</param>
/// <param name="High">The same if the rest delivers all.</param>
/// <param name="PromisedKwh">Promised by all.</param>
/// <param name="VerifiedKwh">Verified.</param>
public sealed record Delivered(int Awards, int VerifiedAwards, double? Share, double Low, double High, double PromisedKwh, double VerifiedKwh)
{
    /// <summary>Adds awards up.</summary>
    /// <param name="awards">Awards; those that no saving was reckoned for are left out.</param>
    /// <returns>What they delivered; null = nothing was promised.</returns>
    public static Delivered? Of(IEnumerable<AwardFacts> awards)
    {
        var promised = awards.Where(a => a.PromisedKwh is > 0).ToList();
        var all = promised.Sum(a => a.PromisedKwh!.Value);
        if (all <= 0)
        {
            return null;
        }

        var verified = promised.Where(a => a.Verified is not null && a.ReturnedOn is null).ToList();
        var kwh = verified.Sum(a => a.Verified!.Share * a.PromisedKwh!.Value);
        var open = promised.Where(a => a.Verified is null && a.ReturnedOn is null).Sum(a => a.PromisedKwh!.Value);
        var ofThose = verified.Sum(a => a.PromisedKwh!.Value);
        return new(promised.Count, verified.Count, ofThose > 0 ? kwh / ofThose : null, kwh / all, (kwh + open) / all, all, kwh);
    }
}
