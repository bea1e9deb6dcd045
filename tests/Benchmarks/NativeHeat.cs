using System.Diagnostics;
using System.Runtime.InteropServices;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Benchmarks;

/// <summary>The C++ loop of Reference/heat.cpp, built in a temporary folder where g++ is present.</summary>
internal sealed unsafe class NativeHeat : IDisposable
{
    private readonly string folder;
    private readonly nint library;
    private readonly delegate* unmanaged<int, int, int, int, int*, int*, int*, double**, double*, double*, double*, double*, bool*, double*, double*, double*, double*, double*, double*, void> season;

    private NativeHeat(string folder, nint library)
    {
        (this.folder, this.library) = (folder, library);
        season = (delegate* unmanaged<int, int, int, int, int*, int*, int*, double**, double*, double*, double*, double*, bool*, double*, double*, double*, double*, double*, double*, void>)NativeLibrary.GetExport(library, "heat_season");
    }

    /// <summary>Builds it; null where there is no g++.</summary>
    public static NativeHeat? Build()
    {
        var folder = Directory.CreateTempSubdirectory("heat-reference").FullName;
        var file = Path.Combine(folder, "heat.so");
        try
        {
            using var compiler = Process.Start(new ProcessStartInfo("g++", ["-O3", "-march=native", "-shared", "-fPIC", "-o", file, Path.Combine(AppContext.BaseDirectory, "Reference", "heat.cpp")]));
            compiler!.WaitForExit();
            if (compiler.ExitCode == 0)
            {
                return new(folder, NativeLibrary.Load(file));
            }
        }
        catch (System.ComponentModel.Win32Exception)
        {
            // no compiler here: the ratio is left out and said to be
        }

        Directory.Delete(folder, true);
        return null;
    }

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

    public void Dispose()
    {
        NativeLibrary.Free(library);
        Directory.Delete(folder, true);
    }
}
