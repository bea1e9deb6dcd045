using System.Runtime.CompilerServices;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>One vector of lanes through one season: the arithmetic of <see cref="HourState"/>, lane by lane in the same order.</summary>
/// <typeparam name="T">The vector.</typeparam>
/// <typeparam name="M">The movables.</typeparam>
internal static class LaneKernel<T, M>
    where T : struct, ILanes<T>
    where M : struct, IMovables
{
    /// <summary>Runs a season.</summary>
    /// <param name="group">Lanes and constants.</param>
    /// <param name="lane">First lane of the vector.</param>
    /// <param name="season">The season.</param>
    /// <param name="stretches">Its stretches.</param>
    /// <param name="monthWh">Sums by month: 12 rows of the group's lanes; written for this vector's lanes.</param>
    public static void Run(LaneGroup group, int lane, SeasonHours season, List<LaneStretch> stretches, double[] monthWh)
    {
        var lanes = group.Lanes;
        var bank = T.All(0);
        foreach (var stretch in stretches)
        {
            if (stretch.ToDay == stretch.FromDay)
            {
                bank = T.All(0);
                continue;
            }

            bank *= T.Load(ref stretch.Set[2 * lanes + lane]);
            ref var sum = ref monthWh[stretch.Month * lanes + lane];
            (var added, bank) = Stretch(group, lane, season, stretch, T.Load(ref sum), bank);
            T.Store(added, ref sum);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static (T Sum, T Bank) Stretch(LaneGroup group, int lane, SeasonHours season, LaneStretch stretch, T sum, T bank)
    {
        var year = season.Year;
        var lanes = group.Lanes;
        var (offset, open, purge) = (Of(group, lane, LaneConstants.Offset), Of(group, lane, LaneConstants.AsOpen), Of(group, lane, LaneConstants.Purge));
        var (carry, cap) = (Of(group, lane, LaneConstants.Carry), Of(group, lane, LaneConstants.Cap));
        var first = new Part(group, lane, LaneConstants.AddFirst, LaneConstants.FirstOn, M.First ? group.FirstClosing : null, season);
        var second = new Part(group, lane, LaneConstants.AddSecond, LaneConstants.SecondOn, M.Second ? group.SecondClosing : null, season);
        var addBoth = Of(group, lane, LaneConstants.AddBoth);
        var (night, day) = (T.Load(ref stretch.Set[lane]), T.Load(ref stretch.Set[lanes + lane]));
        var sunM2 = Of(group, lane, LaneConstants.Sun) * T.Load(ref stretch.Set[2 * lanes + lane]);
        var zero = T.All(0);
        var (from, to) = (24 * stretch.FromDay, 24 * stretch.ToDay);
        var temp = year.TempC.AsSpan(0, to);
        var up = year.SunUp.AsSpan(0, to);
        var sun = year.RadiationWPerM2.AsSpan(0, to);
        var purgeShare = season.PurgeShare.AsSpan(0, to);
        var newDay = season.FirstOfDay.AsSpan(0, to);
        for (var h = from; h < to; h++)
        {
            var outside = T.All(temp[h]) + offset;
            var conductance = open;
            if (M.Second)
            {
                var (f, s) = (first.Share(outside, sun[h], h), second.Share(outside, sun[h], h));
                var both = T.Min(f, s);
                conductance = open + (f - both) * first.Add + (s - both) * second.Add + both * addBoth;
            }
            else if (M.First)
            {
                conductance = open + first.Share(outside, sun[h], h) * first.Add;
            }

            conductance += purge * T.All(purgeShare[h]);
            if (up[h] <= 0)
            {
                var wanted = conductance * T.Max(zero, night - outside);
                var carried = T.Min(bank, wanted);
                bank -= carried;
                sum += T.Min(wanted - carried, cap);
                continue;
            }

            var sunshine = sunM2 * T.All(sun[h]);
            if (M.Shades)
            {
                var through = first.SunThrough(outside, sun[h], h);
                sunshine *= M.Second ? through * second.SunThrough(outside, sun[h], h) : through;
            }

            if (up[h] >= 1)
            {
                var loss = conductance * T.Max(zero, day - outside);
                var used = T.Min(sunshine, loss);
                bank = newDay[h] ? zero : bank;
                bank += carry * (sunshine - used);
                sum += T.Min(loss - used, cap);
            }
            else
            {
                var loss = conductance * T.Max(zero, T.All(up[h]) * day + T.All(1 - up[h]) * night - outside);
                var wanted = loss - T.Min(sunshine, loss);
                var carried = T.Min(bank, wanted);
                bank -= carried;
                sum += T.Min(wanted - carried, cap);
            }
        }

        return (sum, bank);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Of(LaneGroup group, int lane, int row) => T.Load(ref group.Constants[row * group.Lanes + lane]);

    /// <summary>One movable of a vector of lanes.</summary>
    private readonly ref struct Part
    {
        public readonly T Add;
        private readonly T on;
        private readonly T keep;
        private readonly T keepSun;
        private readonly T shade;
        private readonly ReadOnlySpan<double> due;
        private readonly ReadOnlySpan<double> inSun;

        public Part(LaneGroup group, int lane, int add, int row, ClosingTime? closing, SeasonHours season)
        {
            var hours = closing is null ? RuleHours.Never : season.Of(closing);
            due = hours.Due;
            inSun = hours.DueInSun;
            (Add, on, keep) = (Of(group, lane, add), Of(group, lane, row), Of(group, lane, row + 1));
            (keepSun, shade) = (Of(group, lane, row + 2), Of(group, lane, row + 3));
        }

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public T Share(T outside, double sun, int h) => Place(outside, sun, due[h]);

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public T SunThrough(T outside, double sun, int h) => T.All(1) - Place(outside, sun, inSun[h]) * shade;

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        private T Place(T outside, double sun, double share)
        {
            var placed = T.WhereLess(outside, on, T.All(share), T.All(0));
            if (!M.Keeps)
            {
                return placed;
            }

            var cold = T.WhereLess(T.All(sun), keepSun, keep, T.All(double.NegativeInfinity));
            return T.WhereLess(outside, cold, T.All(1), placed);
        }
    }
}
