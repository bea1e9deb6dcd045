using System.Runtime.Intrinsics;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>Width of the vectors a balance runs on.</summary>
internal enum LaneWidth
{
    /// <summary>The widest that the machine has.</summary>
    Widest,

    /// <summary>Two lanes, 128 bits.</summary>
    Two,

    /// <summary>Four lanes, 256 bits.</summary>
    Four,

    /// <summary>Eight lanes, 512 bits.</summary>
    Eight,
}

/// <summary>Demand by month of many options at several offsets at once; the same bits on every width of vector.</summary>
internal static class LaneBalance
{
    /// <summary>One season of a group of lanes.</summary>
    /// <param name="group">The lanes.</param>
    /// <param name="year">The season.</param>
    /// <param name="monthWh">12 rows of the group's lanes, Wh; written.</param>
    /// <param name="width">Width of the vectors.</param>
    public static void Season(LaneGroup group, WeatherYear year, double[] monthWh, LaneWidth width = LaneWidth.Widest)
    {
        Array.Clear(monthWh);
        var season = SeasonHours.Of(year);
        var stretches = group.Stretches(year);
        var bySun = group.Keeps || Shades(group.FirstClosing, season) || Shades(group.SecondClosing, season);
        switch (width == LaneWidth.Widest ? Widest : width)
        {
            case LaneWidth.Eight:
                Run<EightLanes>(group, bySun, season, stretches, monthWh);
                break;
            case LaneWidth.Four:
                Run<FourLanes>(group, bySun, season, stretches, monthWh);
                break;
            default:
                Run<TwoLanes>(group, bySun, season, stretches, monthWh);
                break;
        }
    }

    private static LaneWidth Widest =>
        Vector512.IsHardwareAccelerated ? LaneWidth.Eight : Vector256.IsHardwareAccelerated ? LaneWidth.Four : LaneWidth.Two;

    private static bool Shades(ClosingTime? closing, SeasonHours season) => closing is not null && season.Of(closing).ShadesSun;

    private static void Run<T>(LaneGroup group, bool bySun, SeasonHours season, List<LaneStretch> stretches, double[] monthWh)
        where T : struct, ILanes<T>
    {
        for (var lane = 0; lane < group.Lanes; lane += T.Width)
        {
            if (bySun)
            {
                LaneKernel<T, AnyMovables>.Run(group, lane, season, stretches, monthWh);
            }
            else if (group.SecondClosing is not null)
            {
                LaneKernel<T, TwoByNight>.Run(group, lane, season, stretches, monthWh);
            }
            else if (group.FirstClosing is not null)
            {
                LaneKernel<T, OneByNight>.Run(group, lane, season, stretches, monthWh);
            }
            else
            {
                LaneKernel<T, NoMovable>.Run(group, lane, season, stretches, monthWh);
            }
        }
    }
}
