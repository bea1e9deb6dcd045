using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>Options that go by the same closing times, at several temperature offsets: a lane each, constants beside each other.</summary>
internal sealed class LaneGroup
{
    /// <summary>Lanes are made up to a multiple of this.</summary>
    public const int Block = 8;

    private readonly OptionModel[] options;
    private readonly int offsets;
    private readonly List<LaneStretch>?[] stretches = new List<LaneStretch>?[2];

    private LaneGroup(OptionModel[] options, int[] numbers, ReadOnlySpan<double> offsetsK)
    {
        (this.options, offsets, Numbers) = (options, offsetsK.Length, numbers);
        Lanes = (options.Length * offsets + Block - 1) / Block * Block;
        FirstClosing = options[0].Movables.Count > 0 ? options[0].Movables[0].Rule.Closing : null;
        SecondClosing = options[0].Movables.Count > 1 ? options[0].Movables[1].Rule.Closing : null;
        Constants = new double[LaneConstants.Count * Lanes];
        for (var lane = 0; lane < Lanes; lane++)
        {
            var option = options[Math.Min(lane / offsets, options.Length - 1)];
            LaneConstants.Write(Constants.AsSpan(), Lanes, lane, option, offsetsK[lane % offsets]);
        }

        Keeps = options.Any(o => o.Movables.Any(m => m.Rule.KeepBelowC > double.NegativeInfinity));
    }

    /// <summary>Where its options stand in the list it was made from.</summary>
    public int[] Numbers { get; }

    /// <summary>Lanes, made up to whole blocks.</summary>
    public int Lanes { get; }

    /// <summary>Constants: <see cref="LaneConstants"/> rows of <see cref="Lanes"/>.</summary>
    public double[] Constants { get; }

    /// <summary>When the first movable is due; null = there is none.</summary>
    public ClosingTime? FirstClosing { get; }

    /// <summary>When the second movable is due; null = there is none.</summary>
    public ClosingTime? SecondClosing { get; }

    /// <summary>Whether anything is kept in place by cold at any hour.</summary>
    public bool Keeps { get; }

    /// <summary>Sorts options into groups.</summary>
    /// <param name="options">Options.</param>
    /// <param name="offsetsK">Temperature offsets, K.</param>
    /// <returns>Groups.</returns>
    public static LaneGroup[] Of(IReadOnlyList<OptionModel> options, ReadOnlySpan<double> offsetsK)
    {
        var byClosing = options.Select((o, i) => (Option: o, Number: i))
            .GroupBy(p => (p.Option.Movables.ElementAtOrDefault(0)?.Rule.Closing, p.Option.Movables.ElementAtOrDefault(1)?.Rule.Closing)).ToArray();
        var groups = new LaneGroup[byClosing.Length];
        for (var g = 0; g < groups.Length; g++)
        {
            groups[g] = new([.. byClosing[g].Select(p => p.Option)], [.. byClosing[g].Select(p => p.Number)], offsetsK);
        }

        return groups;
    }

    /// <summary>Lane of an option at an offset.</summary>
    /// <param name="option">Place of the option in the group.</param>
    /// <param name="offset">Number of the offset.</param>
    /// <returns>The lane.</returns>
    public int Lane(int option, int offset) => option * offsets + offset;

    /// <summary>The season cut where a month ends or any option's set points change. It depends on the season by its length alone.</summary>
    /// <param name="year">The season.</param>
    /// <returns>Stretches in order; one in which no option heats is empty.</returns>
    public List<LaneStretch> Stretches(WeatherYear year) => stretches[year.Hours == 8784 ? 1 : 0] ??= Cut(year);

    private List<LaneStretch> Cut(WeatherYear year)
    {
        var known = new Dictionary<object, int[]>(ReferenceEqualityComparer.Instance);
        var periodOf = new int[options.Length][];
        for (var o = 0; o < options.Length; o++)
        {
            if (!known.TryGetValue(options[o].Periods, out var of))
            {
                known[options[o].Periods] = of = RunningChanges.PeriodOfDay(options[o].Periods, year.Season);
            }

            periodOf[o] = of;
        }

        var result = new List<LaneStretch>();
        var (from, month, days) = (0, 0, year.Hours / 24);
        for (var d = 1; d <= days; d++)
        {
            var monthEnds = 24 * d == year.MonthStart[month + 1];
            if (d < days && !monthEnds && Array.TrueForAll(periodOf, of => of[d] == of[d - 1]))
            {
                continue;
            }

            if (Array.Exists(periodOf, of => of[from] >= 0))
            {
                result.Add(Stretch(periodOf, from, d, month));
            }
            else
            {
                result.Add(new(from, from, month, []));
            }

            (from, month) = (d, monthEnds ? month + 1 : month);
        }

        return result;
    }

    private LaneStretch Stretch(int[][] periodOf, int from, int to, int month)
    {
        var set = new double[3 * Lanes];
        for (var lane = 0; lane < Lanes; lane++)
        {
            var o = Math.Min(lane / offsets, options.Length - 1);
            var p = periodOf[o][from];
            set[lane] = p >= 0 ? options[o].Periods[p].NightC : LaneStretch.NotHeatedC;
            set[Lanes + lane] = p >= 0 ? options[o].Periods[p].DayC : LaneStretch.NotHeatedC;
            set[2 * Lanes + lane] = p >= 0 ? 1 : 0;
        }

        return new(from, to, month, set);
    }
}

/// <summary>Days on which no set point changes.</summary>
/// <param name="FromDay">First day of the season in it.</param>
/// <param name="ToDay">Day after the last; the same as the first where nobody heats: banked sun is lost there.</param>
/// <param name="Month">Month, July = 0.</param>
/// <param name="Set">Night set points, day set points, and 1 where a lane is heated, by lane.</param>
internal sealed record LaneStretch(int FromDay, int ToDay, int Month, double[] Set)
{
    /// <summary>A set point below any weather: no demand. In between, twilight hours weigh it with itself.</summary>
    public const double NotHeatedC = -1024;
}
