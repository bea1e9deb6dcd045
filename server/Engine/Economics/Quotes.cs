using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;

namespace FarmPortfolio.Engine.Economics;

/// <summary>What quotes say of one retrofit on one house.</summary>
internal static class Quotes
{
    /// <summary>The newest quote that names the retrofit on the house, and its sum.</summary>
    internal static (QuoteFacts Quote, double Usd)? Newest(IReadOnlyList<QuoteFacts> quotes, HouseModel house, string code)
    {
        (QuoteFacts Quote, double Usd)? best = null;
        foreach (var quote in quotes)
        {
            var cents = quote.Lines.Where(l => l.RetrofitCode == code && l.HouseId == house.HouseId).Sum(l => l.Cents);
            if (cents > 0 && (best is null || quote.QuotedOn > best.Value.Quote.QuotedOn))
            {
                best = (quote, cents / 100.0);
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
}
