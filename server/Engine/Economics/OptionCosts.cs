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
/// <param name="WholeYears">Life of the whole it is a part of: when the whole is renewed, the part comes with it. Null = it is the whole.</param>
public sealed record Renewal(double EveryYears, double Usd, bool WithFilm = false, double? WholeYears = null);

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

    /// <summary>Whether the whole is renewed at the end of its life; if not, its saving ends there.</summary>
    public bool Renewed { get; init; } = true;

    /// <summary>The part of the outlay that a grant may count.</summary>
    public required double EligibleUsd { get; init; }

    /// <summary>Whether a quote behind it has run out.</summary>
    public bool QuoteExpired { get; init; }

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
    /// <param name="uses">How its movables are used in a season.</param>
    /// <returns>The costs.</returns>
    public static OptionCosts Of(HouseModel house, FarmFacts farm, OptionFacts option, IReadOnlyList<QuoteFacts> quotes, ScenarioSetFacts set, MovableUses uses)
    {
        var parts = option.Parts.Select(code => PartCost.Of(house, code, option, quotes, set.FirstSeason)).ToList();
        var whole = parts.Sum(p => p.Usd);
        double Weighted(Func<PartCost, double> of) => whole > 0 ? parts.Sum(p => p.Usd * of(p)) / whole : 0;
        var dearest = parts.Where(p => p.Quote is not null).MaxBy(p => p.Usd)?.Quote;
        var costs = new OptionCosts
        {
            Outlay = [.. parts.SelectMany(p => p.Lines)],
            Running = RunningCosts.Of(house, farm, option, set, uses),
            Renewals = [.. parts.SelectMany(p => p.Renewals)],
            LifeYears = option.Overrides?.LifeYears ?? Weighted(p => p.LifeYears),
            Renewed = option.Overrides?.NotRenewed != true,
            EligibleUsd = parts.Sum(p => p.EligibleUsd),
            QuoteExpired = parts.Any(p => p.Quote is { RaisedBy: > 0 }),
            Basis = dearest is null ? "catalogue" : $"{dearest.Quote.Firmness.ToString().ToLowerInvariant()} quote of {dearest.Quote.QuotedOn:yyyy-MM-dd}" + (dearest.RaisedBy > 0 ? $", run out and raised by {100 * dearest.RaisedBy:0} %" : string.Empty),
            QuoteYear = dearest?.Quote.QuotedOn.Year ?? set.FirstSeason,
            SpreadSd = whole > 0 ? Weighted(p => p.Sd) : Quotes.Sd(house.Catalogue, QuoteFirmness.Catalogue),
            NotCounted = RunningCosts.NotCounted(house.Facts, option),
        };
        return option.Overrides?.OutlayCents is { } own ? costs.WithOwnOutlay(own / 100.0, Quotes.Sd(house.Catalogue, QuoteFirmness.Budget)) : costs;
    }

    private OptionCosts WithOwnOutlay(double usd, double sd)
    {
        var scale = OutlayUsd > 0 && usd > 0 ? usd / OutlayUsd : 1;
        return this with
        {
            Outlay = [new("Outlay, own figure", usd, "outlayCents")],
            Renewals = [.. Renewals.Select(r => r.WithFilm ? r : r with { Usd = r.Usd * scale })],
            EligibleUsd = usd,
            QuoteExpired = false,
            Basis = "own figure",
            SpreadSd = sd,
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
