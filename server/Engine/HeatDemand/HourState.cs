using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Weather;
using static System.Math;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>
/// One option's balance, hour after hour, written plainly: the reference that the vectorised kernel must meet bit for bit.
/// What an hour needs of those before it is the sun that the day has left over.
/// </summary>
internal struct HourState
{
    private readonly OptionModel option;
    private readonly double asOpen;
    private readonly double addFirst;
    private readonly double addSecond;
    private readonly double addBoth;
    private readonly OperationRule? firstRule;
    private readonly OperationRule? secondRule;
    private readonly RuleHours? firstHours;
    private readonly RuleHours? secondHours;
    private double bankWh;

    /// <summary>Starts before the first hour of a season.</summary>
    /// <param name="option">The option.</param>
    /// <param name="season">The season.</param>
    public HourState(OptionModel option, SeasonHours season)
    {
        this.option = option;
        asOpen = option.TotalWPerK(0);
        (addFirst, addSecond, addBoth) = (option.TotalWPerK(1) - asOpen, option.TotalWPerK(2) - asOpen, option.TotalWPerK(3) - asOpen);
        firstRule = option.Movables.Count > 0 ? option.Movables[0].Rule : null;
        secondRule = option.Movables.Count > 1 ? option.Movables[1].Rule : null;
        firstHours = firstRule is null ? null : season.Of(firstRule.Closing);
        secondHours = secondRule is null ? null : season.Of(secondRule.Closing);
    }

    /// <summary>Share of the hour with the first movable in place.</summary>
    public double First { get; private set; }

    /// <summary>Share of the hour with the second movable in place.</summary>
    public double Second { get; private set; }

    /// <summary>Set point less outside where positive, K.</summary>
    public double LiftK { get; private set; }

    /// <summary>Heat delivered, W.</summary>
    public double DemandW { get; private set; }

    /// <summary>Heat wanted before the heater's cap, W.</summary>
    public double WantedW { get; private set; }

    /// <summary>Heat vented on purpose, W.</summary>
    public double PurgeW { get; private set; }

    /// <summary>Share of the hour's sun that passes what is in place.</summary>
    public double SunThrough { get; private set; }

    /// <summary>Sun that counted, W.</summary>
    public double SunUsedW { get; private set; }

    /// <summary>Carried sun that counted, W.</summary>
    public double CarriedW { get; private set; }

    /// <summary>Forgets the bank: the house is not heated.</summary>
    public void Reset() => bankWh = 0;

    /// <summary>Kelvin of the hour that fell in a state; of two movables the shorter use lies inside the longer.</summary>
    /// <param name="state">Bits of what is in place.</param>
    /// <returns>Kelvin.</returns>
    public readonly double StateK(int state)
    {
        var both = Min(First, Second);
        return LiftK * (state switch { 0 => 1 - Max(First, Second), 1 => First - both, 2 => Second - both, _ => both });
    }

    /// <summary>Balances one hour.</summary>
    /// <param name="period">The day's set points.</param>
    /// <param name="season">The season.</param>
    /// <param name="h">Hour of the season.</param>
    /// <param name="offsetK">Added to the outside temperature, K.</param>
    public void Step(HeatingPeriod period, SeasonHours season, int h, double offsetK)
    {
        var year = season.Year;
        var outside = year.TempC[h] + offsetK;
        var (up, radiation) = (year.SunUp[h], year.RadiationWPerM2[h]);
        (First, var firstThrough) = firstRule is null ? (0, 1) : firstRule.At(firstHours!, outside, radiation, h);
        (Second, var secondThrough) = secondRule is null ? (0, 1) : secondRule.At(secondHours!, outside, radiation, h);
        SunThrough = firstThrough * secondThrough;
        var both = Min(First, Second);
        var conductance = asOpen + (First - both) * addFirst + (Second - both) * addSecond + both * addBoth;
        LiftK = Max(0, up * period.DayC + (1 - up) * period.NightC - outside);
        var purge = option.PurgeWhPerK * season.PurgeShare[h];
        PurgeW = purge * LiftK;
        conductance += purge;
        var loss = conductance * LiftK;
        var sunW = option.SunM2 * radiation * SunThrough;
        SunUsedW = Min(sunW, loss);
        var wanted = loss - SunUsedW;
        if (up >= 1)
        {
            CarriedW = 0;
            bankWh = season.FirstOfDay[h] ? 0 : bankWh;
            bankWh += option.CarryOver * (sunW - SunUsedW);
        }
        else
        {
            CarriedW = Min(bankWh, wanted);
            bankWh -= CarriedW;
            wanted -= CarriedW;
        }

        WantedW = wanted;
        DemandW = Min(wanted, option.OutputW);
    }
}
