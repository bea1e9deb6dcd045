using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;

namespace FarmPortfolio.Engine.Economics;

/// <summary>What a quote says of one retrofit on one house.</summary>
/// <param name="Quote">The quote.</param>
/// <param name="Usd">Its sum for the house and retrofit, raised where it has run out.</param>
/// <param name="EligibleUsd">The part of it that a grant may count.</param>
/// <param name="RaisedBy">Share by which it is raised; 0 = it still holds.</param>
internal sealed record QuotedCost(QuoteFacts Quote, double Usd, double EligibleUsd, double RaisedBy);

/// <summary>Reads quotes.</summary>
internal static class Quotes
{
    private const double RaisePerMonth = 0.01;
    private const double MostRaised = 0.20;

    /// <summary>The newest quote that names the retrofit on the house. One that has run out before the study's first season is raised by 1 % a month, at most 20 %; common practice, no source.</summary>
    internal static QuotedCost? Newest(IReadOnlyList<QuoteFacts> quotes, HouseModel house, string code, int firstSeason)
    {
        QuotedCost? best = null;
        foreach (var quote in quotes)
        {
            var lines = quote.Lines.Where(l => l.RetrofitCode == code && l.HouseId == house.HouseId).ToList();
            var cents = lines.Sum(l => l.Cents);
            if (cents > 0 && (best is null || quote.QuotedOn > best.Quote.QuotedOn))
            {
                var raised = Raise(quote.ValidUntilOn, firstSeason);
                best = new(quote, cents / 100.0 * (1 + raised), lines.Where(l => l.Eligible).Sum(l => l.Cents) / 100.0 * (1 + raised), raised);
            }
        }

        return best;
    }

    /// <summary>Spread of the outlay by firmness: 7, 20, 30 %; common practice, no source.</summary>
    internal static double Sd(Catalogue catalogue, QuoteFirmness firmness) => catalogue.Default(firmness switch
    {
        QuoteFirmness.Firm => "firmQuoteSd",
        QuoteFirmness.Budget => "budgetQuoteSd",
        _ => "catalogueQuoteSd",
    });

    private static double Raise(DateOnly? validUntil, int firstSeason)
    {
        var start = new DateOnly(firstSeason, 7, 1);
        return validUntil is { } until && until < start ? Math.Min(MostRaised, RaisePerMonth * Math.Max(1, 12 * (start.Year - until.Year) + start.Month - until.Month)) : 0;
    }
}
