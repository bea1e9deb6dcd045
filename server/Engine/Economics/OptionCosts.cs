using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Engine.Economics;

/// <summary>A line of what an option costs.</summary>
/// <param name="What">Plain words.</param>
/// <param name="Usd">US dollars of today.</param>
/// <param name="Field">Field of the overrides that changes it; null = none.</param>
/// <param name="Quantity">Quantity behind it; null = none.</param>
/// <param name="Unit">Unit of the quantity.</param>
public sealed record CostLine(string What, double Usd, string? Field = null, double? Quantity = null, string? Unit = null);

/// <summary>A renewal during the horizon.</summary>
/// <param name="EveryYears">Years between.</param>
/// <param name="Usd">US dollars of today.</param>
/// <param name="WithFilm">Whether it comes with each film change instead.</param>
public sealed record Renewal(double EveryYears, double Usd, bool WithFilm = false);

/// <summary>What an option costs once, each season, and again.</summary>
public sealed record OptionCosts
{
    /// <summary>Lines of the outlay.</summary>
    public required IReadOnlyList<CostLine> Outlay { get; init; }

    /// <summary>Lines of a season's running.</summary>
    public required IReadOnlyList<CostLine> Running { get; init; }

    /// <summary>Renewals of parts, and of the whole at the end of its life.</summary>
    public required IReadOnlyList<Renewal> Renewals { get; init; }

    /// <summary>Life of the whole, years, weighted by cost.</summary>
    public required double LifeYears { get; init; }

    /// <summary>Where the outlay comes from.</summary>
    public required string Basis { get; init; }

    /// <summary>Year of the quotes, for the error common to a year.</summary>
    public required int QuoteYear { get; init; }

    /// <summary>Standard deviation of the log of the outlay.</summary>
    public required double SpreadSd { get; init; }

    /// <summary>What is not counted, in words.</summary>
    public required IReadOnlyList<string> NotCounted { get; init; }

    /// <summary>Sum of the outlay.</summary>
    public double OutlayUsd => Sum(Outlay);

    /// <summary>Sum of a season's running.</summary>
    public double RunningUsd => Sum(Running);

    /// <summary>Costs of an option.</summary>
    /// <param name="house">House.</param>
    /// <param name="farm">Farm.</param>
    /// <param name="option">Option.</param>
    /// <param name="quotes">The farm's quotes.</param>
    /// <param name="set">Assumptions.</param>
    /// <param name="nights">Nights a season on which the movable is used.</param>
    /// <param name="heatedDays">Days heated.</param>
    /// <param name="lightLost">Share of daylight lost.</param>
    /// <returns>The costs.</returns>
    public static OptionCosts Of(HouseModel house, FarmFacts farm, OptionFacts option, IReadOnlyList<QuoteFacts> quotes, ScenarioSetFacts set, double nights, int heatedDays, double lightLost)
    {
        var outlay = new List<CostLine>();
        var renewals = new List<Renewal>();
        var (quotedSd, quoteYear, basis) = (double.NaN, set.FirstSeason, "catalogue");
        var (weightedLife, weight) = (0.0, 0.0);
        foreach (var code in option.Parts)
        {
            double N(string name) => house.Catalogue.Value(CatalogueKind.Retrofit, code, name);
            var title = house.Catalogue.Find(CatalogueKind.Retrofit, code)?.Title ?? code;
            var quote = Quotes.Newest(quotes, house, code);
            var lines = quote is { } q ? [new CostLine($"{title}, quoted {q.Quote.QuotedOn:yyyy-MM-dd}", q.Usd)] : CatalogueOutlay.Of(house, code, title, option.Timing);
            if (quote is { } known)
            {
                (quoteYear, basis) = (known.Quote.QuotedOn.Year, $"{known.Quote.Firmness.ToString().ToLowerInvariant()} quote of {known.Quote.QuotedOn:yyyy-MM-dd}");
                quotedSd = Quotes.Sd(house.Catalogue, known.Quote.Firmness);
            }

            outlay.AddRange(lines);
            var life = N("lifeYears");
            var usd = Sum(lines);
            (weightedLife, weight) = (weightedLife + life * usd, weight + usd);
            var floor = house.Geometry.FloorM2;
            var part = N("partUsd") + N("partPerFloor") * floor;
            if (part > 0)
            {
                renewals.Add(new(N("partLifeYears"), part));
            }

            if (N("relayPerFloor") > 0)
            {
                renewals.Add(new(0, N("relayPerFloor") * floor, WithFilm: true));
            }

            if (life > 0 && code != "irfilm")
            {
                renewals.Add(new(option.Overrides?.LifeYears ?? life, usd));
            }
        }

        if (option.Overrides?.OutlayCents is { } own)
        {
            var scale = Sum(outlay) > 0 ? own / 100.0 / Sum(outlay) : 0;
            renewals = [.. renewals.Select(r => r.WithFilm ? r : r with { Usd = r.Usd * (scale > 0 ? scale : 1) })];
            outlay = [new("Outlay, own figure", own / 100.0, "outlayCents")];
            (basis, quotedSd) = ("own figure", Quotes.Sd(house.Catalogue, QuoteFirmness.Budget));
        }

        return new()
        {
            Outlay = outlay,
            Running = RunningCosts.Of(house, farm, option, set, nights, heatedDays, lightLost),
            Renewals = renewals,
            LifeYears = option.Overrides?.LifeYears ?? (weight > 0 ? weightedLife / weight : 0),
            Basis = basis,
            QuoteYear = quoteYear,
            SpreadSd = double.IsNaN(quotedSd) ? Quotes.Sd(house.Catalogue, QuoteFirmness.Catalogue) : quotedSd,
            NotCounted = RunningCosts.NotCounted(house.Facts),
        };
    }

    internal static double Sum(IEnumerable<CostLine> lines)
    {
        var sum = 0.0;
        foreach (var line in lines)
        {
            sum += line.Usd;
        }

        return sum;
    }
}
