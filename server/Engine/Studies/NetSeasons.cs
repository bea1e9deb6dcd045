using System.Runtime.CompilerServices;

namespace FarmPortfolio.Engine.Studies;

/// <summary>Net saving of an option, season by season: what the house would cost less what it costs with the option, times the share realised, less what is spent.</summary>
internal sealed class NetSeasons
{
    private const int Stretch = CostKernel.Stretch;
    private readonly StudyContext context;
    private readonly CashPlan plan;
    private readonly (PricedLine Line, double[] Weight, bool IsOwn)[] burnt;
    private readonly double[] kept;
    private readonly double[] spent;

    /// <summary>Puts together what does not depend on the path.</summary>
    /// <param name="context">What all houses share.</param>
    /// <param name="house">House.</param>
    /// <param name="option">Option.</param>
    /// <param name="lines">The house's lines with a month's prices.</param>
    /// <param name="moved">Line with a month's prices that the option moves the first heater to; null = none.</param>
    public NetSeasons(StudyContext context, StudyHouse house, OptionTerms option, PricedLine[] lines, PricedLine? moved)
    {
        (this.context, plan) = (context, option.Plan);
        var seasons = Enumerable.Range(0, context.Seasons).ToArray();
        kept = [.. seasons.Select(s => plan.Runs(s) ? option.Kept(context.Set, s) : 0)];
        spent = [.. seasons.Select(s => plan.CostUsd[s] + (plan.Runs(s) ? option.Moved?.FeesUsd(s) ?? 0 : 0))];
        burnt =
        [
            .. lines.Where(l => option.Moved is null || l.Supply.HeaterNo != 0).Select(l => (l, seasons.Select(s => -(l.Supply.Share / option.EfficiencyOf(house, l.Supply, s))).ToArray(), false)),
            .. moved is null ? [] : new[] { (moved, seasons.Select(s => -(moved.Supply.Share / plan.Efficiency[s])).ToArray(), true) },
        ];
    }

    /// <summary>Nets a stretch and counts its paybacks.</summary>
    /// <param name="lane">The option's lane on the house's lines.</param>
    /// <param name="standing">Cost as the house stands, season by season a row of a stretch.</param>
    /// <param name="money">Takes net saving and paybacks; holds share and outlay.</param>
    /// <param name="first">First path among all.</param>
    /// <param name="count">Paths.</param>
    [SkipLocalsInit]
    public void Run(int lane, double[] standing, OptionMoney money, int first, int count)
    {
        var share = money.Share.AsSpan(first, count);
        Span<double> net = stackalloc double[context.Seasons * Stretch];
        for (var s = 0; s < context.Seasons; s++)
        {
            var row = net.Slice(s * Stretch, count);
            var to = money.Net.AsSpan(s * context.Paths + first, count);
            if (s < plan.StartSeason)
            {
                to.Clear();
                continue;
            }

            scoped ReadOnlySpan<double> before = standing.AsSpan(s * Stretch, count);
            for (var i = 0; i + 1 < burnt.Length; i++)
            {
                Rows.Sum(before, burnt[i].Weight[s], Cost(burnt[i], lane, s, count), row);
                before = row;
            }

            if (burnt.Length > 0)
            {
                Rows.Net(before, burnt[^1].Weight[s], Cost(burnt[^1], lane, s, count), share, kept[s], spent[s], row);
            }
            else
            {
                Rows.Scale(before, share, kept[s], spent[s], row);
            }

            row.CopyTo(to);
        }

        money.Payback.Count(net, Stretch, first, count, plan.StartSeason, context.Seasons, money.Outlay, context.Set.DiscountRate);
    }

    private Span<double> Cost((PricedLine Line, double[] Weight, bool IsOwn) burnt, int lane, int season, int count) => burnt.Line.Row(burnt.IsOwn ? 0 : lane, season, context.Seasons, count);
}
