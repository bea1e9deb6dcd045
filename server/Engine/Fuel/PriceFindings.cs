using System.Globalization;
using static System.Math;

namespace FarmPortfolio.Engine.Fuel;

/// <summary>One thing that a price record says or cannot say.</summary>
/// <param name="Code">Stable code in capitals: SPAN, SHORT, UNIT_ROOT.</param>
/// <param name="Words">A plain sentence.</param>
public sealed record PriceFinding(string Code, string Words);

/// <summary>What a record's diagnostics mean, in plain sentences.</summary>
public static class PriceFindings
{
    // beyond these a finding is worth a sentence: twice the standard error of a lag in ten years, and a tail that a bell curve of twenty years does not show
    private const double NotedLag = 0.18;
    private const double NotedKurtosis = 1;
    private const int NamedJumps = 3;

    /// <summary>The findings, the most telling first.</summary>
    /// <param name="d">Diagnostics.</param>
    /// <returns>Findings.</returns>
    public static IReadOnlyList<PriceFinding> Of(PriceDiagnostics d)
    {
        var found = new List<PriceFinding>();
        void Add(string code, FormattableString words) => found.Add(new(code, words.ToString(CultureInfo.InvariantCulture)));
        Add("SPAN", $"{d.Months} months, {d.FirstMonthOn:yyyy-MM} to {d.LastMonthOn:yyyy-MM}{(d.Filled + d.Dropped == 0 ? ", no gap" : string.Empty)}.");
        if (d.Filled > 0)
        {
            Add("FILLED", $"{d.Filled} {(d.Filled == 1 ? "month was" : "months were")} missing and {(d.Filled == 1 ? "is" : "are")} filled by a straight line between neighbours.");
        }

        if (d.Dropped > 0)
        {
            Add("CUT", $"A gap of more than {PriceRecord.LongestFilledMonths} months cuts the record: {d.Dropped} months on the other side of it are not used.");
        }

        Spread(d, Add);
        if (d.UnitRoot is { } root && d.Return is { } back)
        {
            if (root.IsRejected && back.HalfLifeMonths is { } half)
            {
                Add("RETURNS", $"The record speaks for a slow return to a level (that it returns nowhere is rejected, p {root.P:0.000}; half a gap gone in {half:0} months). Forecasts that trusted such a fit did worse than the default, so it is shown and not used.");
            }
            else
            {
                Add("UNIT_ROOT", $"The record does not say that the price returns to any level (that it returns nowhere is not rejected, p {root.P:0.00}): a dear time may last.");
            }
        }

        if (d.FreeFit is { } free)
        {
            Add(free.IsDetermined ? "HALF_LIFE" : "HALF_LIFE_OPEN", free.IsDetermined
                ? $"Fitted freely, half a spike is gone in {free.HalfLifeMonths:0} months ({12 * Log(2) / free.ReversionHigh:0} to {12 * Log(2) / free.ReversionLow:0})."
                : (FormattableString)$"How long a spike lasts is not determined: fitted freely, half of it is gone in anything from {12 * Log(2) / free.ReversionHigh:0} to {12 * Log(2) / free.ReversionLow:0} months.");
        }

        Tails(d, Add);
        if (d.BackTest.Count > 0)
        {
            var first = d.BackTest[0];
            Add("BACK_TEST", $"Forecasts from its own first months: {first.InsideNinety} of {first.Forecasts} outcomes a year ahead fell where 90 of 100 should{(d.BackTest.Count < 5 ? string.Empty : string.Create(CultureInfo.InvariantCulture, $", {d.BackTest[4].InsideNinety} of {d.BackTest[4].Forecasts} five years ahead"))}. Neighbouring forecasts overlap.");
        }

        return found;
    }

    private static void Spread(PriceDiagnostics d, Action<string, FormattableString> add)
    {
        var m = d.Model;
        if (d.Months < PriceRecord.FewestMonths)
        {
            add("SHORT", $"{d.Months} months are too few for a fit ({PriceRecord.FewestMonths} would do): only the last price is used, and how prices move is what is usual for such prices, {100 * d.ClassVolatility:0.#} % a year.");
            return;
        }

        add("SPREAD", $"Prices move {100 * m.Volatility:0.#} % a year: the record alone says {100 * m.RawVolatility:0.#} %, such prices in general {100 * d.ClassVolatility:0.#} %, weighed {Round(100 * (1 - m.PriorWeight)):0} to {Round(100 * m.PriorWeight):0}.");
        if (d.Months < PriceDiagnostics.FiveYears)
        {
            add("SHORT", $"Under five years of record: what is usual for such prices weighs more than the record itself.");
        }

        if (d.LongSpread is { } spread && Abs(Log(spread / d.ModelLongSpread)) > Log(1.25))
        {
            add("LONG_SPREAD", $"Over three years its prices spread {(spread < d.ModelLongSpread ? "less" : "more")} than the futures assume ({spread:0.00} against {d.ModelLongSpread:0.00} of what three-month changes alone would give): the default is the {(spread < d.ModelLongSpread ? "wider" : "narrower")} of the two.");
        }
    }

    private static void Tails(PriceDiagnostics d, Action<string, FormattableString> add)
    {
        if (d.ExcessKurtosis is { } tails && tails > NotedKurtosis)
        {
            add("FAT_TAILS", $"Months of great change come more often than a bell curve has them (excess kurtosis {tails:0.0}); calm and turbulent times in the futures stand for that.");
        }

        if (d.Lag is { } lag && lag > NotedLag)
        {
            add("CARRIES_ON", $"A month's change carries on into the next (correlation {lag:0.00}), as means of daily prices do; the spread is therefore read from three-month changes.");
        }

        if (d.Jumps.Count > 0)
        {
            var named = d.Jumps.Take(NamedJumps).Select(j => string.Create(CultureInfo.InvariantCulture, $"{(j.Change > 0 ? "+" : "−")}{100 * Abs(Exp(j.Change) - 1):0} % in {j.MonthOn:yyyy-MM}"));
            add("JUMPS", $"{d.Jumps.Count} {(d.Jumps.Count == 1 ? "month jumps" : "months jump")} out of the usual: {string.Join(", ", named)}{(d.Jumps.Count > NamedJumps ? " and others" : string.Empty)}. Check that they are prices and no slips.");
        }
    }
}
