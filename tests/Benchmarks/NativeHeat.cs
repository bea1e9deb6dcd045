using System.Runtime.InteropServices;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Benchmarks;

/// <summary>The C++ loop of Reference/heat.cpp, built in a temporary folder where g++ is present.</summary>
internal sealed unsafe class NativeHeat : IDisposable
{
    private readonly NativeBuild build;
    private readonly delegate* unmanaged<int, int, int, int, int*, int*, int*, double**, double*, double*, double*, double*, bool*, double*, double*, double*, double*, double*, double*, void> season;

    private NativeHeat(NativeBuild build)
    {
        this.build = build;
        season = (delegate* unmanaged<int, int, int, int, int*, int*, int*, double**, double*, double*, double*, double*, bool*, double*, double*, double*, double*, double*, double*, void>)build.Export("heat_season");
    }

    /// <summary>Builds it; null where there is no g++.</summary>
    public static NativeHeat? Build() => NativeBuild.Of("heat") is { } built ? new(built) : null;

    /// <summary>One season of a group.</summary>
    public void Season(LaneGroup group, WeatherYear year, double[] monthWh)
    {
        Array.Clear(monthWh);
        var hours = SeasonHours.Of(year);
        var stretches = group.Stretches(year);
        var (from, to, month) = (stretches.Select(s => s.FromDay).ToArray(), stretches.Select(s => s.ToDay).ToArray(), stretches.Select(s => s.Month).ToArray());
        var first = group.FirstClosing is null ? RuleHours.Never : hours.Of(group.FirstClosing);
        var second = group.SecondClosing is null ? RuleHours.Never : hours.Of(group.SecondClosing);
        var empty = new double[3 * group.Lanes];
        var pins = stretches.Select(s => GCHandle.Alloc(s.Set.Length > 0 ? s.Set : empty, GCHandleType.Pinned)).ToArray();
        var sets = stackalloc double*[stretches.Count];
        for (var s = 0; s < stretches.Count; s++)
        {
            sets[s] = (double*)pins[s].AddrOfPinnedObject();
        }

        fixed (int* f = from, t = to, m = month)
        fixed (double* temp = year.TempC, up = year.SunUp, sun = year.RadiationWPerM2, purge = hours.PurgeShare, dueFirst = first.Due, dueSecond = second.Due, sunFirst = first.DueInSun, sunSecond = second.DueInSun, c = group.Constants, sum = monthWh)
        fixed (bool* ofDay = hours.FirstOfDay)
        {
            var movables = group.SecondClosing is not null ? 2 : group.FirstClosing is not null ? 1 : 0;
            season(movables, first.ShadesSun || second.ShadesSun ? 1 : 0, group.Lanes, stretches.Count, f, t, m, sets, temp, up, sun, purge, ofDay, dueFirst, dueSecond, sunFirst, sunSecond, c, sum);
        }

        foreach (var pin in pins)
        {
            pin.Free();
        }
    }

    public void Dispose() => build.Dispose();
}
