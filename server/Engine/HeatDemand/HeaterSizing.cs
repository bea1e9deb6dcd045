using FarmPortfolio.Engine.Units;
using static System.Math;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>Peak demand of an option against the heater.</summary>
/// <param name="DesignC">Outside design temperature, C.</param>
/// <param name="WindFactor">What wind adds to the loss.</param>
/// <param name="NeedKw">Heat at the design temperature with everything movable in place, kW.</param>
/// <param name="NeedOpenKw">The same with everything movable open, as during snowfall or after a failure, kW.</param>
/// <param name="OutputKw">Heat that the heaters deliver, kW; null = not known.</param>
/// <param name="HoldsToC">Outside temperature down to which the heaters hold the set point with everything in place, C; null = not known.</param>
/// <param name="NextOutputKw">Output that the next heater needs, kW.</param>
/// <param name="NextInputKw">Rated input that the next heater needs at the option's seasonal efficiency, kW.</param>
/// <param name="TooSmall">Whether the heaters of today cannot meet <paramref name="NeedKw"/>.</param>
/// <param name="Verdict">In plain words.</param>
public sealed record HeaterSize(
    double DesignC, double WindFactor, double NeedKw, double NeedOpenKw, double? OutputKw, double? HoldsToC, double NextOutputKw, double NextInputKw, bool TooSmall, string Verdict);

/// <summary>Sizes heaters: peak load = sum of conductances x (set point - design temperature) x wind factor (ASABE EP406, from memory).</summary>
public static class HeaterSizing
{
    /// <summary>Reserve over the need with everything in place; common practice, no source.</summary>
    public const double Reserve = 1.10;

    /// <summary>Temperature that the house must still hold with everything open at the design temperature, C (40 F), so that a failure or a snowfall loses no crop; common practice, no source.</summary>
    public static readonly double SurvivalC = Us.C(40);

    private static readonly double[] WindMph = [15, 20, 25, 30];
    private static readonly double[] Factor = [1.00, 1.04, 1.08, 1.12];

    /// <summary>What wind adds to the peak loss: 1.00 up to 15 mph, 1.04 at 20, 1.08 at 25, 1.12 at 30, straight between and on; from memory.</summary>
    /// <param name="windMPerS">Wind at the design condition, m/s, 0 or more.</param>
    /// <returns>1 or more.</returns>
    public static double WindFactor(double windMPerS)
    {
        var mph = windMPerS / (1609.344 / 3600);
        if (mph <= WindMph[0])
        {
            return 1;
        }

        var i = Min(WindMph.Length - 2, (int)((mph - WindMph[0]) / 5));
        return Factor[i] + (Factor[i + 1] - Factor[i]) * (mph - WindMph[i]) / 5;
    }

    /// <summary>Sizes the heater of an option.</summary>
    /// <param name="option">The option on its house.</param>
    /// <param name="designC">Outside design temperature, C.</param>
    /// <param name="windMPerS">Wind at the design condition, m/s; 6.7 = 15 mph.</param>
    /// <returns>The size.</returns>
    public static HeaterSize Of(OptionModel option, double designC, double windMPerS = 6.7)
    {
        var wind = WindFactor(windMPerS);
        var set = option.Periods.Count == 0 ? designC : option.Periods.Max(p => p.NightC);
        var all = (1 << option.Movables.Count) - 1;
        double Kw(int state, double insideC) => Max(0, option.TotalWPerK(state) * wind * (insideC - designC)) / 1000;
        var (need, open) = (Kw(all, set), Kw(0, set));
        double? output = double.IsInfinity(option.OutputW) ? null : option.OutputW / 1000;
        double? holds = output is { } kw ? set - kw * 1000 / (option.TotalWPerK(all) * wind) : null;
        var next = Max(Reserve * need, Kw(0, Min(set, SurvivalC)));
        var tooSmall = output < need;
        return new(designC, wind, need, open, output, holds, next, next / option.Efficiency, tooSmall, Words(need, open, output, next, option));
    }

    private static string Words(double need, double open, double? output, double next, OptionModel option)
    {
        var what = FormattableString.Invariant($"The design night takes {need:0} kW");
        what += option.Movables.Count > 0 ? FormattableString.Invariant($" with everything in place and {open:0} kW with it open. ") : ". ";
        var size = FormattableString.Invariant($"The next heater needs {next:0} kW of output: a tenth over the need, and enough to keep the crop alive with everything open.");
        return output switch
        {
            null => what + "The heater's size is not known. " + size,
            { } kw when kw < need => what + FormattableString.Invariant($"The heaters deliver {kw:0} kW: too small, the house falls below its set point. ") + size,
            { } kw when kw > 1.25 * next => what + FormattableString.Invariant($"The heaters deliver {kw:0} kW, {100 * (1 - next / kw):0} % more than is needed. ") + size,
            { } kw => what + FormattableString.Invariant($"The heaters deliver {kw:0} kW. ") + size,
        };
    }
}
