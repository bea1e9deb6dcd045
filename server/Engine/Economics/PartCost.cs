using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;

namespace FarmPortfolio.Engine.Economics;

/// <summary>What one retrofit of an option costs once and again, from its quote or the catalogue.</summary>
/// <param name="Lines">Lines of the outlay.</param>
/// <param name="Usd">Their sum.</param>
/// <param name="EligibleUsd">The part that a grant may count.</param>
/// <param name="Sd">Standard deviation of the log of the outlay.</param>
/// <param name="LifeYears">Life of the whole.</param>
/// <param name="Renewals">Renewals of its parts and of the whole.</param>
/// <param name="Quote">The quote behind it; null = the catalogue.</param>
internal sealed record PartCost(
    IReadOnlyList<CostLine> Lines, double Usd, double EligibleUsd, double Sd, double LifeYears, IReadOnlyList<Renewal> Renewals, QuotedCost? Quote)
{
    internal static PartCost Of(HouseModel house, string code, OptionFacts option, IReadOnlyList<QuoteFacts> quotes, int firstSeason)
    {
        double N(string name) => house.Catalogue.Value(CatalogueKind.Retrofit, code, name);
        var title = house.Catalogue.Find(CatalogueKind.Retrofit, code)?.Title ?? code;
        var quote = Quotes.Newest(quotes, house, code, firstSeason);
        var lines = quote is null ? CatalogueOutlay.Of(house, code, title, option.Timing) : [new CostLine($"{title}, quoted {quote.Quote.QuotedOn:yyyy-MM-dd}", quote.Usd)];
        var usd = OptionCosts.Sum(lines);
        var life = option.Overrides?.LifeYears ?? N("lifeYears");
        var part = N("partUsd") + N("partPerFloor") * house.Geometry.FloorM2;
        var renewals = new List<Renewal>();
        if (part > 0)
        {
            renewals.Add(new(N("partLifeYears"), part, WholeYears: life));
        }

        if (N("relayPerFloor") > 0)
        {
            renewals.Add(new(0, N("relayPerFloor") * house.Geometry.FloorM2, WithFilm: true, WholeYears: life));
        }

        if (life > 0 && code != "irfilm" && option.Overrides?.NotRenewed != true)
        {
            renewals.Add(new(life, usd));
        }

        return new(lines, usd, quote?.EligibleUsd ?? usd, Quotes.Sd(house.Catalogue, quote?.Quote.Firmness ?? QuoteFirmness.Catalogue), life, renewals, quote);
    }
}
