using FarmPortfolio.Engine.Funding;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A range of money, US dollars: one in ten lower, one in ten higher.</summary>
[Name("MoneyRange")]
public sealed record MoneyRangeView(double P10, double P90);

/// <summary>What the printed sheets tell besides the pages.</summary>
public sealed partial class OptionView
{
    // standard normal quantile at 90 % (Wichura 1988, AS 241)
    private const double OneInTen = 1.2815515655446004;

    /// <summary>How the outlay spreads about its mean: lognormal, as a study draws it; by how firm the quote is. Null = nothing to lay out.</summary>
    public MoneyRangeView? OutlayRange =>
        costs.Value is { OutlayUsd: > 0 } c ? new(c.OutlayUsd * Math.Exp(-c.SpreadSd * c.SpreadSd / 2 - OneInTen * c.SpreadSd), c.OutlayUsd * Math.Exp(-c.SpreadSd * c.SpreadSd / 2 + OneInTen * c.SpreadSd)) : null;
}

/// <summary>Grants of a house.</summary>
public sealed partial class HouseView
{
    /// <summary>Awards for the house, newest first.</summary>
    public IEnumerable<AwardView> Awards([FromServices] RoundsDesk desk) =>
        desk.Awards.Values.Where(a => a.Facts.HouseId == item.Id).OrderByDescending(a => a.Facts.AwardedOn).ThenBy(a => a.Id, StringComparer.Ordinal).Select(a => new AwardView(desk, a));
}
