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
        switch (width == LaneWidth.Widest ? Widest : width)
        {
            case LaneWidth.Eight:
                Run<EightLanes>(group, season, stretches, monthWh);
                break;
            case LaneWidth.Four:
                Run<FourLanes>(group, season, stretches, monthWh);
                break;
            default:
                Run<TwoLanes>(group, season, stretches, monthWh);
                break;
        }
    }

    private static LaneWidth Widest =>
        Vector512.IsHardwareAccelerated ? LaneWidth.Eight : Vector256.IsHardwareAccelerated ? LaneWidth.Four : LaneWidth.Two;

    private static bool Shades(ClosingTime? closing, SeasonHours season) => closing is not null && season.Of(closing).ShadesSun;

    private static void Run<T>(LaneGroup group, SeasonHours season, List<LaneStretch> stretches, double[] monthWh)
        where T : struct, ILanes<T>
    {
        var shades = Shades(group.FirstClosing, season) || Shades(group.SecondClosing, season);
        Action<LaneGroup, int, SeasonHours, List<LaneStretch>, double[]> kernel = (group.Keeps, group.FirstClosing is null, group.SecondClosing is null, shades) switch
        {
            (true, _, _, _) => LaneKernel<T, KeptByCold>.Run,
            (_, true, _, _) => LaneKernel<T, NoMovable>.Run,
            (_, _, true, false) => LaneKernel<T, OneByNight>.Run,
            (_, _, true, true) => LaneKernel<T, OneShading>.Run,
            (_, _, false, false) => LaneKernel<T, TwoByNight>.Run,
            (_, _, false, true) => LaneKernel<T, TwoShading>.Run,
        };
        for (var lane = 0; lane < group.Lanes; lane += T.Width)
        {
            kernel(group, lane, season, stretches, monthWh);
        }
    }
}
