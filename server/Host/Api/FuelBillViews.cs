using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.HeatDemand.Calibration;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A ticket, bill or total and what became of it.</summary>
[Name("FuelEntry")]
public sealed record FuelEntryView(
    int No, FuelEntryKind Kind, DateOnly FromOn, DateOnly ToOn, double Quantity, string Unit, double? TotalUsd, double? PriceUsdPerUnit, double? FeesUsd, ReadKind Read, double? GaugeBeforePct, double? GaugeAfterPct,
    double? ThermsPerCcf, bool OnlyDollars, bool Confirmed, DateOnly? IssuedOn, string? Note, string? TakenOut, double? SpreadShare, EntryUse Use, string? Why, IEnumerable<FaultView> Faults)
{
    /// <summary>A line with its state.</summary>
    internal static FuelEntryView Of(FuelEntry e, EntryState state, IEnumerable<EntryFault> faults) => new(
        state.No, e.Kind, e.FromOn, e.ToOn, e.Quantity, e.Unit, e.TotalCents / 100.0, e.PriceUsdPerUnit, e.FeesCents / 100.0, e.Read, e.GaugeBeforePct, e.GaugeAfterPct,
        e.ThermsPerCcf, e.OnlyDollars, e.Confirmed, e.IssuedOn, e.Note, e.Held, e.SdShare, state.Use, state.Why, faults.Select(f => FaultView.Of(f.Fault)));
}

/// <summary>Fuel of an interval: billed, as described, and with the fit. Of a total the heated days are those on which the houses want heat; of a bill or between fills they are its days.</summary>
[Name("UseInterval")]
public sealed record UseIntervalView(DateOnly FromOn, DateOnly ToOn, int Days, int HeatedDays, double BilledKwh, double DescribedKwh, double FittedKwh, double ResidualKwh, double SdKwh, bool Metered, bool Outlying, string? Note);

/// <summary>A fitted number; low and high hold it in 90 of 100 cases.</summary>
[Name("FittedNumber")]
public sealed record FittedView(double Value, double? Low, double? High);

/// <summary>The newest season told, before anything is fitted.</summary>
[Name("SeasonCheck")]
public sealed record SeasonCheckView(string SeasonName, DateOnly FromOn, DateOnly ToOn, double SeasonShare, double ReckonedKwh, double BilledKwh);

/// <summary>What one cause alone would have to be.</summary>
[Name("LossReasons")]
public sealed record LossReasonsView(double? AirChangesFactor, double? FilmFactor);

/// <summary>Films and leaks as the bills leave them, factors on what is described; low and high hold them in 90 of 100 cases.</summary>
[Name("FilmsAndAir")]
public sealed record FilmsAndAirView(double AirFactor, double AirLow, double AirHigh, double FilmFactor, double FilmLow, double FilmHigh, bool BillsTell)
{
    /// <summary>From the engine's fit.</summary>
    internal static FilmsAndAirView Of(FilmsAndAir a)
    {
        static double At(double factor, double sdLn, int side) => factor * Math.Exp(side * Engine.Units.NormalEnds.OneInTwenty * sdLn);
        return new(a.AirFactor, At(a.AirFactor, a.AirSdLn, -1), At(a.AirFactor, a.AirSdLn, 1), a.FilmFactor, At(a.FilmFactor, a.FilmSdLn, -1), At(a.FilmFactor, a.FilmSdLn, 1), a.BillsTell);
    }
}

/// <summary>A fuel record against the houses behind it.</summary>
[Name("FuelBills")]
public sealed class FuelBillsView(Register register, string groupId, FuelRecordFacts? record, Item<FuelRecordFacts>? item, GroupFit fit)
{
    /// <summary>Revision of the record; null = none yet.</summary>
    public int? Revision => (int?)item?.Revision;

    /// <summary>Whether the supplier fills on his own schedule.</summary>
    public bool? AutomaticDelivery => record?.AutomaticDelivery;

    /// <summary>Its lines in the record's order.</summary>
    public IEnumerable<FuelEntryView> Entries => (record?.Entries ?? []).Select((e, i) => FuelEntryView.Of(e, fit.Use.Entries[i], fit.Use.Faults.Where(f => f.No == i)));

    /// <summary>Its intervals whose weather is on record.</summary>
    public IEnumerable<UseIntervalView> Intervals => fit.Intervals.Select(i => new UseIntervalView(i.Use.FromOn, i.Use.ToOn, i.Use.Days, i.ScatterDays, i.Use.KwhFuel, i.DescribedKwh, i.FittedKwh, i.ResidualKwh, i.Use.SdKwh, i.Use.Metered, i.Outlying, i.Use.Note));

    /// <summary>Intervals whose weather is not on record.</summary>
    public int WithoutWeather => fit.WithoutWeather;

    /// <summary>What was assumed for the whole record.</summary>
    public IEnumerable<string> Notes => fit.Use.Notes;

    /// <summary>Loss multiplier.</summary>
    public FittedView? Multiplier => Of(fit.Multiplier);

    /// <summary>Fuel a day that does not follow the weather, kWh.</summary>
    public FittedView? BaseKwhPerDay => Of(fit.BaseKwhPerDay);

    /// <summary>Whether the base use was fitted.</summary>
    public bool BaseIsFitted => fit.BaseIsFitted;

    /// <summary>Bias with the fit, per cent.</summary>
    public double? NmbePct => fit.Fit?.NmbePct;

    /// <summary>Scatter with the fit, per cent.</summary>
    public double? CvRmsePct => fit.Fit?.CvRmsePct;

    /// <summary>Bias as described, per cent.</summary>
    public double? DescribedNmbePct => fit.AsDescribed?.NmbePct;

    /// <summary>Scatter as described, per cent.</summary>
    public double? DescribedCvRmsePct => fit.AsDescribed?.CvRmsePct;

    /// <summary>The back-check.</summary>
    public SeasonCheckView? Check => fit.Check is { } c ? new(SeasonCalendar.Name(c.Season), c.FromOn, c.ToOn, c.SeasonShare, c.ReckonedKwh, c.BilledKwh) : null;

    /// <summary>What leaks alone, or films alone, would have to be.</summary>
    public LossReasonsView? Reasons => LeaksAndFilms.Of(register.Behind(groupId), register.WintersOf(groupId), fit) is { } r ? new(r.AirChangesFactor, r.FilmFactor) : null;

    /// <summary>Films and leaks as the bills leave them; null where no multiplier is believed.</summary>
    public FilmsAndAirView? Apart => fit.Apart is { } a ? FilmsAndAirView.Of(a) : null;

    /// <summary>Whether the multiplier is believed.</summary>
    public bool Believed => fit.Believed;

    /// <summary>Data grade.</summary>
    public DataGrade Grade => fit.Grade;

    /// <summary>Spread that the futures take, per cent.</summary>
    public double SdPct => 100 * fit.Sd;

    /// <summary>Verdict.</summary>
    public string Verdict => fit.Verdict;

    /// <summary>What to check, first things first.</summary>
    public IEnumerable<string> Checks => fit.Checks;

    /// <summary>What would raise the grade.</summary>
    public IEnumerable<string> Raise => fit.Raise;

    private static FittedView? Of(Fitted? f) => f is null ? null : new(f.Value, f.Low, f.High);
}

/// <summary>Bills of a tank or meter.</summary>
public sealed partial class SupplyGroupView
{
    /// <summary>Its fuel record against the houses behind it.</summary>
    public FuelBillsView Bills => new(register, item.Id, Record?.Facts, Record, register.Fit(item.Id));
}

/// <summary>Bills of a house.</summary>
public sealed partial class HouseView
{
    /// <summary>Data grade.</summary>
    public DataGrade DataGrade => register.Grade(item.Facts);

    /// <summary>Tanks and meters it hangs on.</summary>
    public IEnumerable<SupplyGroupView> SupplyGroups => item.Facts.Supplies.Where(s => register.Groups.ContainsKey(s.SupplyGroupId)).Select(s => new SupplyGroupView(register, register.Groups[s.SupplyGroupId]));

    /// <summary>What was reckoned against what was billed, all behind its tank or meter, in the newest season that is told in full.</summary>
    public BackCheckView? BackCheck => register.Recorded(item.Facts) is { } group
        ? register.Fit(group) is { Check: { } c } fit ? new(SeasonCalendar.Name(c.Season), c.ReckonedKwh, c.BilledKwh, fit.Verdict) : AgainstMiddling(group)
        : null;

    /// <summary>Bills of a winter that the station's record does not hold, against its middling winter: a first look, no fit.</summary>
    private BackCheckView? AgainstMiddling(string group)
    {
        var entries = register.Records.Values.First(r => r.Facts.SupplyGroupId == group).Facts.Entries.Where(e => e.Held is null).ToList();
        if (entries.Count == 0 || register.Middling(item.Facts) is not { } winter)
        {
            return null;
        }

        var season = entries.Max(e => SeasonCalendar.SeasonOf(e.FromOn));
        return new(SeasonCalendar.Name(season), register.Behind(group).Sum(b => b.Share * HeatBalance.Season(OptionModels.AsItStands(b.Model), winter).TotalKwh / b.Model.Heaters[b.HeaterNo].Efficiency),
            entries.Where(e => SeasonCalendar.SeasonOf(e.FromOn) == season).Sum(e => Kwh(group, e)), winter.FromNormals
                ? "a first look only, for the station is known by monthly normals only and that winter's weather is not known; we reckon with a middling one made from them"
                : $"a first look only, for the station's record lacks that winter; we reckon with its middling one, {SeasonCalendar.Name(winter.Season)}");
    }

    private double Kwh(string groupId, FuelEntry e) => e.Quantity * (HeatingValues.KwhPerUnit(register.Groups[groupId].Facts.Fuel, e.Unit, register.Heating, e.ThermsPerCcf) ?? 0);
}
