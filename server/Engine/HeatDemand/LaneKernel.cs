using System.Runtime.CompilerServices;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>Which movables a group has, known when the kernel is compiled.</summary>
internal interface IMovables
{
    /// <summary>Whether there is a first.</summary>
    static abstract bool First { get; }

    /// <summary>Whether there is a second.</summary>
    static abstract bool Second { get; }

    /// <summary>Whether one may be in place while the sun is up.</summary>
    static abstract bool BySun { get; }
}

internal readonly struct NoMovable : IMovables
{
    public static bool First => false;

    public static bool Second => false;

    public static bool BySun => false;
}

internal readonly struct OneByNight : IMovables
{
    public static bool First => true;

    public static bool Second => false;

    public static bool BySun => false;
}

internal readonly struct TwoByNight : IMovables
{
    public static bool First => true;

    public static bool Second => true;

    public static bool BySun => false;
}

internal readonly struct AnyMovables : IMovables
{
    public static bool First => true;

    public static bool Second => true;

    public static bool BySun => true;
}

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
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Run(LaneGroup group, int lane, SeasonHours season, List<LaneStretch> stretches, double[] monthWh)
    {
        var year = season.Year;
        var lanes = group.Lanes;
        var offset = Constant(group, lane, LaneConstants.Offset);
        var (open, addFirst, addSecond, addBoth) = (Constant(group, lane, LaneConstants.AsOpen), Constant(group, lane, LaneConstants.AddFirst), Constant(group, lane, LaneConstants.AddSecond), Constant(group, lane, LaneConstants.AddBoth));
        var (purge, sunM2, carry, cap) = (Constant(group, lane, LaneConstants.Purge), Constant(group, lane, LaneConstants.Sun), Constant(group, lane, LaneConstants.Carry), Constant(group, lane, LaneConstants.Cap));
        var (firstOn, secondOn) = (Constant(group, lane, LaneConstants.FirstOn), Constant(group, lane, LaneConstants.SecondOn));
        var firstHours = M.First && group.FirstClosing is not null ? season.Of(group.FirstClosing) : RuleHours.Never;
        var secondHours = M.Second && group.SecondClosing is not null ? season.Of(group.SecondClosing) : RuleHours.Never;
        var (temp, up, sun, purgeShare) = (year.TempC, year.SunUp, year.RadiationWPerM2, season.PurgeShare);
        var (dueFirst, dueSecond) = (firstHours.Due, secondHours.Due);
        var zero = T.All(0);
        var bank = zero;
        foreach (var stretch in stretches)
        {
            if (stretch.ToDay == stretch.FromDay)
            {
                bank = zero;
                continue;
            }

            var night = T.Load(ref stretch.Set[lane]);
            var day = T.Load(ref stretch.Set[lanes + lane]);
            var heated = T.Load(ref stretch.Set[2 * lanes + lane]);
            bank *= heated;
            var sunHere = sunM2 * heated;
            var sum = T.Load(ref monthWh[stretch.Month * lanes + lane]);
            for (var h = 24 * stretch.FromDay; h < 24 * stretch.ToDay; h++)
            {
                var outside = T.All(temp[h]) + offset;
                var conductance = open;
                var radiation = sunHere * T.All(sun[h]);
                if (M.BySun)
                {
                    var sunlight = T.All(sun[h]);
                    var keep = T.WhereLess(sunlight, Constant(group, lane, LaneConstants.FirstKeepSun), Constant(group, lane, LaneConstants.FirstKeep), T.All(double.NegativeInfinity));
                    var first = T.WhereLess(outside, keep, T.All(1), T.WhereLess(outside, firstOn, T.All(dueFirst[h]), zero));
                    var inSun = T.WhereLess(outside, keep, T.All(1), T.WhereLess(outside, firstOn, T.All(firstHours.DueInSun[h]), zero));
                    var through = T.All(1) - inSun * Constant(group, lane, LaneConstants.FirstShade);
                    keep = T.WhereLess(sunlight, Constant(group, lane, LaneConstants.SecondKeepSun), Constant(group, lane, LaneConstants.SecondKeep), T.All(double.NegativeInfinity));
                    var second = T.WhereLess(outside, keep, T.All(1), T.WhereLess(outside, secondOn, T.All(dueSecond[h]), zero));
                    inSun = T.WhereLess(outside, keep, T.All(1), T.WhereLess(outside, secondOn, T.All(secondHours.DueInSun[h]), zero));
                    through *= T.All(1) - inSun * Constant(group, lane, LaneConstants.SecondShade);
                    var both = T.Min(first, second);
                    conductance = open + (first - both) * addFirst + (second - both) * addSecond + both * addBoth;
                    radiation *= through;
                }
                else if (M.Second)
                {
                    var first = T.WhereLess(outside, firstOn, T.All(dueFirst[h]), zero);
                    var second = T.WhereLess(outside, secondOn, T.All(dueSecond[h]), zero);
                    var both = T.Min(first, second);
                    conductance = open + (first - both) * addFirst + (second - both) * addSecond + both * addBoth;
                }
                else if (M.First)
                {
                    conductance = open + T.WhereLess(outside, firstOn, T.All(dueFirst[h]), zero) * addFirst;
                }

                if (up[h] <= 0)
                {
                    var lift = T.Max(zero, night - outside);
                    var wanted = (conductance + purge * T.All(purgeShare[h])) * lift;
                    var carried = T.Min(bank, wanted);
                    bank -= carried;
                    sum += T.Min(wanted - carried, cap);
                }
                else if (up[h] >= 1)
                {
                    var lift = T.Max(zero, day - outside);
                    var loss = (conductance + purge * T.All(purgeShare[h])) * lift;
                    var used = T.Min(radiation, loss);
                    bank = season.FirstOfDay[h] ? zero : bank;
                    bank += carry * (radiation - used);
                    sum += T.Min(loss - used, cap);
                }
                else
                {
                    var lift = T.Max(zero, T.All(up[h]) * day + T.All(1 - up[h]) * night - outside);
                    var loss = (conductance + purge * T.All(purgeShare[h])) * lift;
                    var used = T.Min(radiation, loss);
                    var wanted = loss - used;
                    var carried = T.Min(bank, wanted);
                    bank -= carried;
                    sum += T.Min(wanted - carried, cap);
                }
            }

            T.Store(sum, ref monthWh[stretch.Month * lanes + lane]);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Constant(LaneGroup group, int lane, int row) => T.Load(ref group.Constants[row * group.Lanes + lane]);
}
