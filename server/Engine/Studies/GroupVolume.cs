using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.Studies;

/// <summary>Fills what an option takes off a tank's or meter's fuel in a season of a path.</summary>
/// <param name="block">Replicate.</param>
/// <param name="path">Path of the replicate.</param>
/// <param name="season">Season.</param>
/// <param name="kwh">Filled by month, kWh of fuel.</param>
internal delegate void VolumeTaken(FuturesBlock block, int path, int season, Span<double> kwh);

/// <summary>
/// A tank or meter whose bill depends on the season's volume (blocks, minimum takes, steps): all its houses together are settled season by season, as they stand
/// and with one option, and the saving is the difference of the two bills.
/// </summary>
internal sealed class GroupVolume
{
    private readonly StudyContext context;
    private readonly SupplyLine line;
    private readonly double[] kwh;
    private readonly double[] billUsd;
    private readonly double[] otherKwh;
    private readonly double[]? prices;
    private readonly double[] feesUsd;
    private bool isNew;

    private GroupVolume(StudyContext context, SupplyLine line)
    {
        (this.context, this.line) = (context, line);
        var cells = context.Paths * context.Seasons;
        (kwh, billUsd, StandingUsd) = (new double[12 * cells], new double[cells], new double[cells]);
        feesUsd = [.. Enumerable.Range(0, context.Seasons).Select(line.Terms.FeesUsd)];
        prices = line.Terms.IsPricedByMonth ? Prices() : null;
        otherKwh = OtherKwh(context.Portfolio.SupplyGroups.GetValueOrDefault(line.GroupId!), context.Portfolio.Set.FirstSeason);
        for (var cell = 0; cell < cells; cell++)
        {
            otherKwh.CopyTo(kwh, 12 * cell);
        }
    }

    /// <summary>The houses' share of the bill as they stand, by volume, season by season a row of paths, US dollars; what else burns from the tank pays the rest.</summary>
    public double[] StandingUsd { get; }

    /// <summary>The tanks and meters of a unit that settle by the season.</summary>
    /// <param name="context">What all houses share.</param>
    /// <param name="unit">Unit.</param>
    /// <param name="work">Arrays of the thread.</param>
    /// <param name="cancel">Stops it within a house's time.</param>
    /// <returns>By identifier; empty = every price is a month's.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static IReadOnlyDictionary<string, GroupVolume> Of(StudyContext context, StudyUnit unit, Workspace work, CancellationToken cancel)
    {
        var groups = new Dictionary<string, GroupVolume>(StringComparer.Ordinal);
        foreach (var house in unit.Houses.Where(h => h.Supplies.Any(s => !s.Terms.IsMonthly)))
        {
            cancel.ThrowIfCancellationRequested();
            var run = new HouseRun(context, house, new(house, []), work);
            foreach (var supply in house.Supplies.Where(s => !s.Terms.IsMonthly))
            {
                if (!groups.TryGetValue(supply.GroupId!, out var group))
                {
                    groups[supply.GroupId!] = group = new(context, supply);
                }

                run.AddVolume(supply, group.kwh);
            }
        }

        // nobody draws on it yet: it bills nothing until a house is moved there
        foreach (var line in unit.Houses.SelectMany(h => h.Switches.Values).Select(s => s.Line).OfType<SupplyLine>().Where(l => l.GroupId is not null && !l.Terms.IsMonthly && !groups.ContainsKey(l.GroupId)))
        {
            groups[line.GroupId!] = new(context, line) { isNew = true };
        }

        foreach (var group in groups.Values)
        {
            if (!group.isNew || group.otherKwh.Sum() > 0)
            {
                group.Standing();
            }
        }

        return groups;
    }

    /// <summary>Bills the tank or meter as it stands.</summary>
    private void Standing()
    {
        var other = otherKwh.Sum();
        Each(null, (cell, usd, volume) =>
        {
            billUsd[cell] = usd;
            StandingUsd[cell] = volume > 0 ? usd * Math.Max(0, volume - other) / volume : usd;
        });
    }

    /// <summary>Adds what an option saves on the bill.</summary>
    /// <param name="supply">Line of the house.</param>
    /// <param name="taken">What it takes off the fuel.</param>
    /// <param name="net">Season by season a row of paths, US dollars.</param>
    /// <exception cref="ArgumentException">The line hangs on another tank or meter.</exception>
    public void AddSaving(SupplyLine supply, VolumeTaken taken, double[] net)
    {
        if (supply.GroupId != line.GroupId)
        {
            throw new ArgumentException("the line hangs on another tank or meter", nameof(supply));
        }

        Each(taken, (cell, usd, volume) => net[cell] += billUsd[cell] - (isNew && volume == 0 ? 0 : usd));
    }

    private void Each(VolumeTaken? taken, Action<int, double, double> bill)
    {
        var (index, standBy) = (new double[12], new double[line.StandBy is null ? 0 : 12]);
        var (volume, off, carried) = (new double[12], new double[12], new Carried[line.Terms.Parts]);
        var own = OwnPriceNoise.Of(context.Set, line.Terms.Scatter);
        var (scatter, length) = (new double[own?.Length ?? 0], own?.SeasonLength ?? 0);
        foreach (var block in context.Layouts.Select(l => l.Block))
        {
            for (var path = 0; path < block.Paths; path++)
            {
                var number = block.Replicate * block.Paths + path;
                Array.Clear(carried);
                if (prices is null)
                {
                    own?.Fill(number, scatter);
                }

                for (var s = 0; s < context.Seasons; s++)
                {
                    var at = 12 * (path * context.Seasons + s);
                    kwh.AsSpan(12 * (number * context.Seasons + s), 12).CopyTo(volume);
                    taken?.Invoke(block, path, s, off);
                    for (var m = 0; m < 12; m++)
                    {
                        volume[m] = Math.Max(0, volume[m] - off[m]);
                    }

                    if (prices is not null)
                    {
                        bill(s * context.Paths + number, feesUsd[s] + Fuel(prices.AsSpan(12 * (number * context.Seasons + s), 12), volume), volume.Sum());
                        continue;
                    }

                    block.Price(line.Fuel).AsSpan(at, 12).CopyTo(index);
                    if (line.StandBy is { } fuel)
                    {
                        block.Price(fuel).AsSpan(at, 12).CopyTo(standBy);
                    }

                    bill(s * context.Paths + number, line.Terms.SeasonUsd(s, index, volume, standBy, carried, scatter.AsSpan(s * length, length)), volume.Sum());
                }
            }
        }
    }

    private static double Fuel(ReadOnlySpan<double> usdPerKwh, double[] kwh)
    {
        var usd = 0.0;
        for (var m = 0; m < 12; m++)
        {
            usd = Math.FusedMultiplyAdd(usdPerKwh[m], kwh[m], usd);
        }

        return usd;
    }

    /// <summary>Prices of every month of every path, where the volume does not move them: an own price that lies off its line. Drawn once for all options.</summary>
    private double[] Prices()
    {
        var (own, all) = (OwnPriceNoise.Of(context.Set, line.Terms.Scatter), new double[12 * context.Paths * context.Seasons]);
        var (scatter, length) = (new double[own?.Length ?? 0], own?.SeasonLength ?? 0);
        foreach (var block in context.Layouts.Select(l => l.Block))
        {
            for (var path = 0; path < block.Paths; path++)
            {
                var number = block.Replicate * block.Paths + path;
                own?.Fill(number, scatter);
                for (var s = 0; s < context.Seasons; s++)
                {
                    line.Terms.MonthPrices(s, block.Price(line.Fuel).AsSpan(12 * (path * context.Seasons + s), 12), scatter.AsSpan(s * length, length), all.AsSpan(12 * (number * context.Seasons + s), 12));
                }
            }
        }

        return all;
    }

    // a dwelling or a dryer behind the same tank fills blocks and minimum takes as well
    private static double[] OtherKwh(SupplyGroupFacts? group, int season)
    {
        var perDay = (group?.BaseUseKwhPerDay ?? 0) + (group?.OtherUses.Sum(o => o.KwhFuelPerYear ?? 0) ?? 0) / 365;
        return [.. Enumerable.Range(0, 12).Select(m => perDay * DateTime.DaysInMonth(season + (m < 6 ? 0 : 1), SeasonCalendar.CalendarMonth(m)))];
    }
}
