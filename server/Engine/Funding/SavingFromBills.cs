using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand.Calibration;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.Funding;

/// <summary>
/// What an installed award saves, read from the bills of its tank or meter: the houses are fitted to the bills before, that fit is carried to the weather of the
/// bills after, and what was burned is taken from it (ASHRAE Guideline 14's whole-house way, baseline carried to the reporting period). The promise, which holds
/// for the mean of all winters, is set to the same weather. All that hangs on the tank or meter is taken to be run as before.
/// </summary>
public static class SavingFromBills
{
    /// <summary>Least part of a mean season's fuel that the bills after must fall on.</summary>
    public const double LeastOfSeason = 0.5;

    private const double TwoSided90 = 1.645;

    /// <summary>Reckons the share of the promise that was delivered.</summary>
    /// <param name="group">Tank or meter.</param>
    /// <param name="record">Its bills.</param>
    /// <param name="without">Houses behind it as they were without what the award paid for.</param>
    /// <param name="winters">Weather of their station by season year.</param>
    /// <param name="installedOn">Day it was installed.</param>
    /// <param name="promisedKwh">Fuel saving promised a season, kWh.</param>
    /// <param name="values">Heating values that the bills are turned into kWh by; null = those in use where nothing is chosen.</param>
    /// <param name="normalsOnly">Whether their station is known by monthly normals only.</param>
    /// <returns>The verification, or the fault that stands against it.</returns>
    public static (Verification? Verified, Fault? Fault) Of(
        SupplyGroupFacts group, FuelRecordFacts record, IReadOnlyList<BehindTank> without, IReadOnlyDictionary<int, WeatherYear> winters, DateOnly installedOn, double promisedKwh, HeatingValueSet? values = null,
        bool normalsOnly = false)
    {
        var before = Calibrations.Of(group, record with { Entries = [.. record.Entries.Where(e => e.ToOn < installedOn)] }, without, winters, values: values, normalsOnly: normalsOnly);
        if (before.Multiplier is not { } loss || !before.Believed)
        {
            return (null, new("BEFORE_NOT_KNOWN", "verified", $"The bills before {installedOn:yyyy-MM-dd} do not tell what the houses need: {before.Verdict}.", "Enter more bills of the winters before, or enter the result by hand with its interval."));
        }

        var (fuel, burnt) = (new ModelledFuel(without, winters), 0.0);
        var (described, days, unread) = (0.0, 0, 0.0);
        DateOnly? last = null;
        foreach (var use in Calibrations.Of(group, record, without, winters, values: values, normalsOnly: normalsOnly).Use.Intervals.Where(i => i.FromOn > installedOn))
        {
            if (fuel.Of(use.FromOn, use.ToOn) is not { } needed)
            {
                continue;
            }

            (described, days, burnt, unread, last) = (described + needed, days + use.Days, burnt + use.KwhFuel, unread + use.SdKwh * use.SdKwh, use.ToOn);
        }

        var season = winters.Keys.Order().Average(s => fuel.Season(s)!.Sum());
        if (season <= 0 || promisedKwh <= 0 || described < LeastOfSeason * season)
        {
            return (null, new("AFTER_TOO_SHORT", "verified", $"The bills after {installedOn:yyyy-MM-dd} that have their weather on record fall on {100 * described / Math.Max(season, 1e-9):0} % of a mean season's fuel.", $"Verify once they fall on {100 * LeastOfSeason:0} %; enter bills, or the station's record of that winter."));
        }

        var other = before.BaseKwhPerDay?.Value ?? 0;
        var (expected, promised) = (loss.Value * described + other * days, promisedKwh * described / season);
        var spread = Math.Sqrt(Sq(Math.Max(loss.Se ?? 0, Calibrations.LeastSd * loss.Value) * described) + Sq(Calibrations.LeastSd * burnt) + unread);
        var share = (expected - burnt) / promised;
        var half = TwoSided90 * spread / promised;
        var words = $"bills of {days} days after {installedOn:yyyy-MM-dd}: {expected:0} kWh of fuel without it at their weather, {burnt:0} burned; promised at that weather {promised:0}";
        return (new(VerifiedBy.Fuel, Math.Round(share, 3), Math.Round(share - half, 3), Math.Round(share + half, 3), SeasonCalendar.SeasonOf(last!.Value), words), null);
    }

    private static double Sq(double x) => x * x;
}
