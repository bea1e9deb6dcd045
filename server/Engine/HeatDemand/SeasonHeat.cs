namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>Where the heat of a season went, kWh, over the hours heated.</summary>
/// <param name="PartsKwh">By path of heat, in the order of <see cref="HeatPath"/>.</param>
/// <param name="PurgeKwh">Air vented against humidity.</param>
/// <param name="SunUsedKwh">Sun that counted.</param>
/// <param name="CarriedKwh">Sun of the day that served the night.</param>
public sealed record LossSplit(double[] PartsKwh, double PurgeKwh, double SunUsedKwh, double CarriedKwh);

/// <summary>How a movable retrofit was used in a season.</summary>
/// <param name="Code">Catalogue code.</param>
/// <param name="HoursByMonth">Hours in place while the house was heated, July first.</param>
/// <param name="Nights">Days of the season, noon to noon not told apart, on which it was used.</param>
public sealed record MovableUse(string Code, double[] HoursByMonth, int Nights);

/// <summary>A season's heat of one option.</summary>
/// <param name="DemandKwh">Heat the heater must deliver by month, July first; capped at its output.</param>
/// <param name="Losses">Where it went.</param>
/// <param name="PeakKw">Largest hourly demand before the cap, kW.</param>
/// <param name="UndeliveredKwh">Heat wanted over the heater's output.</param>
/// <param name="ColdHours">Hours in which the heater was too small.</param>
/// <param name="HeatedDays">Days with a set point.</param>
/// <param name="DarkDemandKwh">Of the demand, what fell in the dark.</param>
/// <param name="LightLostShare">Share of the daylight of the days heated that the option takes, what it shades while in place included.</param>
/// <param name="Uses">Use of each movable retrofit.</param>
public sealed record SeasonHeat(
    double[] DemandKwh, LossSplit Losses, double PeakKw, double UndeliveredKwh, double ColdHours, int HeatedDays, double DarkDemandKwh, double LightLostShare, IReadOnlyList<MovableUse> Uses)
{
    /// <summary>Hours with the first movable in place, by month, July first.</summary>
    public double[] HoursInPlace => Uses.Count > 0 ? Uses[0].HoursByMonth : new double[12];

    /// <summary>Nights on which the first movable was used.</summary>
    public double NightsInUse => Uses.Count > 0 ? Uses[0].Nights : 0;

    /// <summary>Heat of the season, kWh.</summary>
    public double TotalKwh
    {
        get
        {
            var sum = 0.0;
            foreach (var month in DemandKwh)
            {
                sum += month;
            }

            return sum;
        }
    }
}
