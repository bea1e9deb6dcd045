using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Weather;
using static System.Math;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>What an hour's balance needs of the hours before it: how long a movable has been due, what sun the day has left over.</summary>
internal struct HourState
{
    private readonly double k0;
    private readonly double k1;
    private readonly double k2;
    private readonly double k3;
    private readonly bool hasFirst;
    private readonly bool hasSecond;
    private double firstDelay;
    private double secondDelay;
    private double bankWh;
    private double darkHours;
    private double second;
    private double liftK;

    /// <summary>Starts before the first hour.</summary>
    /// <param name="option">The option.</param>
    public HourState(OptionModel option)
    {
        (k0, k1, k2, k3) = (option.TotalWPerK(0), option.TotalWPerK(1), option.TotalWPerK(2), option.TotalWPerK(3));
        hasFirst = option.Movables.Count > 0;
        hasSecond = option.Movables.Count > 1;
    }

    /// <summary>Share of the hour with the first movable in place.</summary>
    public double First { get; private set; }

    /// <summary>Heat delivered, W.</summary>
    public double DemandW { get; private set; }

    /// <summary>Heat wanted before the heater's cap, W.</summary>
    public double WantedW { get; private set; }

    /// <summary>Heat vented on purpose, W.</summary>
    public double PurgeW { get; private set; }

    /// <summary>Sun that counted, W.</summary>
    public double SunUsedW { get; private set; }

    /// <summary>Carried sun that counted, W.</summary>
    public double CarriedW { get; private set; }

    /// <summary>Forgets the bank: the house is not heated.</summary>
    public void Reset() => bankWh = 0;

    /// <summary>Begins a day.</summary>
    /// <param name="year">The weather.</param>
    /// <param name="day">Day of the season.</param>
    public void StartDay(WeatherYear year, int day)
    {
        darkHours = 0;
        for (var h = 24 * day; h < 24 * day + 24; h++)
        {
            darkHours += 1 - year.SunUp[h];
        }
    }

    /// <summary>Kelvin of the hour that fell in a state.</summary>
    /// <param name="state">Bits of what is in place.</param>
    /// <returns>Kelvin.</returns>
    public readonly double StateK(int state) => liftK * ((state & 1) == 1 ? First : 1 - First) * ((state & 2) == 2 ? second : 1 - second);

    /// <summary>Balances one hour.</summary>
    /// <param name="option">The option.</param>
    /// <param name="period">The day's set points.</param>
    /// <param name="year">The weather.</param>
    /// <param name="h">Hour of the season.</param>
    /// <param name="offsetK">Added to the outside temperature, K.</param>
    public void Step(OptionModel option, HeatingPeriod period, WeatherYear year, int h, double offsetK)
    {
        var outside = year.TempC[h] + offsetK;
        var up = year.SunUp[h];
        var sunW = option.SunM2 * year.RadiationWPerM2[h];
        First = hasFirst ? InPlace(option.Movables[0], outside, up, year.RadiationWPerM2[h], ref firstDelay) : 0;
        second = hasSecond ? InPlace(option.Movables[1], outside, up, year.RadiationWPerM2[h], ref secondDelay) : 0;
        var set = up * period.DayC + (1 - up) * period.NightC;
        liftK = Max(0, set - outside);
        var conductance = (1 - second) * ((1 - First) * k0 + First * k1) + second * ((1 - First) * k2 + First * k3);
        PurgeW = darkHours > 0 ? option.PurgeWhPerK * (1 - up) / darkHours * liftK : 0;
        var loss = conductance * liftK + PurgeW;
        SunUsedW = Min(sunW, loss);
        if (up >= 1)
        {
            bankWh += option.CarryOver * (sunW - SunUsedW);
        }

        var wanted = loss - SunUsedW;
        CarriedW = up < 1 ? Min(bankWh, wanted) : 0;
        bankWh = up >= 1 ? bankWh : bankWh - CarriedW;
        WantedW = wanted - CarriedW;
        DemandW = Min(WantedW, option.OutputW);
    }

    private static double InPlace(OperationRule rule, double outsideC, double sunUp, double radiation, ref double delay)
    {
        var due = radiation < rule.CloseBelowWPerM2 ? 1 : 1 - sunUp;
        if (due <= 0)
        {
            delay = rule.DelayHours;
        }

        var lost = Min(delay, due);
        delay -= lost;
        var dark = outsideC < rule.OnBelowC ? due - lost : 0;
        return outsideC < rule.KeepBelowC ? 1 : dark;
    }
}
