using FarmPortfolio.Engine;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Trials;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A figure with its 90 % interval.</summary>
[Name("Measured")]
public sealed record MeasuredView(double Value, double Low, double High)
{
    /// <summary>From the engine's figure.</summary>
    internal static MeasuredView Of(Measured m) => new(m.Value, m.Low, m.High);
}

/// <summary>A night of a trial: heat a day against the lift, inside less outside.</summary>
[Name("TrialNight")]
public sealed record TrialNightView(string On, double OutsideC, double ControlLiftK, double ControlKwhPerDay, double TreatedLiftK, double TreatedKwhPerDay, RetrofitState State, string? LeftOut);

/// <summary>Saving at a range of outside temperatures.</summary>
[Name("SavingAtCold")]
public sealed record SavingAtColdView(double FromC, double ToC, double Nights, MeasuredView Saving);

/// <summary>A straight line of heat a day on lift.</summary>
[Name("UseLine")]
public sealed record UseLineView(double AtZeroKwh, double KwhPerK, double FromK, double ToK)
{
    /// <summary>From the engine's line.</summary>
    internal static UseLineView Of(UseLine l) => new(l.AtZeroKwh, l.KwhPerK, l.FromK, l.ToK);
}

/// <summary>What the same trial would have shown at a station: modelled saving there times the factor.</summary>
[Name("TrialElsewhere")]
public sealed record ElsewhereView(string Station, double ModelledSaving, MeasuredView? Saving, double StandingKwh);

/// <summary>What the saving of a season is worth on a fuel.</summary>
[Name("TrialWorth")]
public sealed record WorthView(FuelKind Fuel, double UsdPerUnit, string Unit, MeasuredView Usd);

/// <summary>Nights of a house set aside by hand: those that end on these days.</summary>
[Name("NightsAside")]
public sealed record NightsAsideView(int No, string House, DateOnly From, DateOnly To, string Reason);

/// <summary>Weeks a trial needs.</summary>
[Name("TrialWeeks")]
public sealed record WeeksView(double HalfWidthPoints, int? WeeksInUse, int? WeeksIdle);

/// <summary>A treated house against the control.</summary>
[Name("TrialComparison")]
public sealed class TrialComparisonView(Register register, Item<TrialFacts> trial, TrialComparison c)
{
    /// <summary>House.</summary>
    public string House => c.Label;

    /// <summary>Retrofit.</summary>
    public string RetrofitCode => c.RetrofitCode;

    /// <summary>Its plain name.</summary>
    public string RetrofitTitle => register.Catalogue.Find(CatalogueKind.Retrofit, c.RetrofitCode)?.Title ?? c.RetrofitCode;

    /// <summary>Saving of heat at equal inside temperature, share.</summary>
    public MeasuredView Saving => MeasuredView.Of(c.Saving);

    /// <summary>Saving of heat as run, share.</summary>
    public double AsRunSaving => c.AsRunSaving;

    /// <summary>Heat saved over the nights in use, kWh.</summary>
    public MeasuredView SavedKwh => MeasuredView.Of(c.SavedKwh);

    /// <summary>Saving modelled for the same nights, share.</summary>
    public double? ModelledSaving => c.ModelledSaving;

    /// <summary>Measured over modelled.</summary>
    public MeasuredView? Factor => c.Factor is { } f ? MeasuredView.Of(f) : null;

    /// <summary>Whether idle nights tell how alike the houses are.</summary>
    public bool IdleKnown => c.IdleKnown;

    /// <summary>Nights in use, broken ones among them.</summary>
    public double NightsInUse => c.NightsInUse;

    /// <summary>Nights broken or forgotten.</summary>
    public double NightsBroken => c.NightsBroken;

    /// <summary>Nights idle.</summary>
    public double NightsIdle => c.NightsIdle;

    /// <summary>Nights, in time.</summary>
    public IEnumerable<TrialNightView> Nights => c.Pairs.Where(p => double.IsFinite(p.ControlKwh + p.TreatedKwh + p.OutsideC)).Select(p => new TrialNightView(
        p.To.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture), p.OutsideC, p.ControlDegreeHours / p.Hours, 24 * p.ControlKwh / p.Hours, p.TreatedDegreeHours / p.Hours, 24 * p.TreatedKwh / p.Hours, p.State, p.LeftOut));

    /// <summary>Line of the control.</summary>
    public UseLineView ControlLine => UseLineView.Of(c.ControlLine);

    /// <summary>Line of the treated house in use.</summary>
    public UseLineView TreatedLine => UseLineView.Of(c.TreatedLine);

    /// <summary>Saving by outside temperature, coldest first.</summary>
    public IEnumerable<SavingAtColdView> ByCold => c.ByCold.Select(b => new SavingAtColdView(b.FromC, b.ToC, b.Nights, MeasuredView.Of(b.Saving)));

    /// <summary>Saving gained for each kelvin colder, share; null where the nights were all alike.</summary>
    public MeasuredView? PerKelvinColder => double.IsFinite(c.PerKelvinColder.Sd) ? MeasuredView.Of(c.PerKelvinColder) : null;

    /// <summary>What must be known of the answer.</summary>
    public IEnumerable<string> Words => c.Words;

    /// <summary>The same house at every station of the co-op, in its middle winter.</summary>
    public IEnumerable<ElsewhereView> Elsewhere => register.Stations.Values.Select(s => (s.Remarks.Name, Year: Middle(s.Id))).Where(s => s.Year is not null).Select(s => At(s.Name ?? "unnamed", s.Year!)).OfType<ElsewhereView>();

    /// <summary>Worth of a season's saving on each fuel, at the trial's own station in its middle winter and the coming season's middle price.</summary>
    public IEnumerable<WorthView> Worth
    {
        get
        {
            if (trial.Facts.WeatherStationId is not { } id || Middle(id) is not { } year || At(string.Empty, year) is not { Saving: { } saving } here)
            {
                yield break;
            }

            foreach (var (fuel, heater) in new[] { (FuelKind.NaturalGas, "power"), (FuelKind.Propane, "power"), (FuelKind.FuelOil, "oilfurnace"), (FuelKind.Electricity, "resistance") })
            {
                if (Query.PriceFan(register, fuel, 1) is { } fan && HeatingValues.KwhPerUnit(fuel, fan.Unit, register.Heating) is { } kwh)
                {
                    var price = fan.P50.Skip(4).Take(6).Average();
                    var usd = here.StandingKwh / register.Catalogue.Value(CatalogueKind.Heater, heater, "seasonalEfficiency", 0.8) / kwh * price;
                    yield return new(fuel, price, fan.Unit, new(usd * saving.Value, usd * saving.Low, usd * saving.High));
                }
            }
        }
    }

    /// <summary>Weeks that a trial as this one, a third of them idle, needs for a width.</summary>
    public WeeksView WeeksFor(double halfWidthPoints = 5) => TrialDesignFields.Weeks(c.WeekSd, c.Saving.Value, halfWidthPoints);

    private ElsewhereView? At(string station, WeatherYear year)
    {
        var set = register.SetFacts;
        var house = trial.Facts.Houses.First(h => h.Label == c.Label);
        if (HouseModels.Of(house.House, register.Catalogue, set.Heat(), set.FirstSeason, house.Fuel).Model is not { } model)
        {
            return null;
        }

        var standing = HeatBalance.Season(OptionModels.AsItStands(model), year).TotalKwh;
        var modelled = 1 - HeatBalance.Season(OptionModels.Of(model, new("trial", [c.RetrofitCode])).Model!, year).TotalKwh / standing;
        return standing > 0 ? new(station, modelled, c.Factor is { } f ? new(modelled * f.Value, modelled * f.Low, modelled * f.High) : null, standing) : null;
    }

    private WeatherYear? Middle(string stationId)
    {
        var years = register.Winters(stationId)?.Years.Values.OrderBy(y => y.DegreeDaysK(15)).ToList() ?? [];
        return years.Count > 0 ? years[years.Count / 2] : null;
    }
}

/// <summary>A trial of houses run side by side.</summary>
[Name("Trial")]
public sealed class TrialView(Register register, Item<TrialFacts> item)
{
    private readonly Lazy<TrialReport> report = new(() => Report(register, item.Facts, register.Blobs.Read(register.Viewer, item.Facts.ReadingsSha256)));

    /// <summary>Identifier.</summary>
    [Id] public string Id => item.Id;

    /// <summary>Revision.</summary>
    public int Revision => (int)item.Revision;

    /// <summary>Name.</summary>
    public string Name => item.Remarks.Name ?? "unnamed";

    /// <summary>Place.</summary>
    public string? Place => item.Remarks.Place;

    /// <summary>Note.</summary>
    public string? Note => item.Remarks.Note;

    /// <summary>First day.</summary>
    public string StartsOn => item.Facts.StartsOn.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>Last day.</summary>
    public string EndsOn => item.Facts.EndsOn.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>Station whose hours the model takes.</summary>
    public string? Station => item.Facts.WeatherStationId is { } id && register.Stations.TryGetValue(id, out var s) ? s.Remarks.Name : null;

    /// <summary>House left as it stands.</summary>
    public string? Control => item.Facts.Houses.FirstOrDefault(h => h.Role == TrialRole.Control)?.Label;

    /// <summary>Treated houses against it.</summary>
    [Complexity(1, 3)]
    public IEnumerable<TrialComparisonView> Comparisons => report.Value.Comparisons.Select(c => new TrialComparisonView(register, item, c));

    /// <summary>Its houses as the notebook calls them, the control first.</summary>
    public IEnumerable<string> Houses => item.Facts.Houses.OrderBy(h => h.Role).Select(h => h.Label);

    /// <summary>Nights set aside by hand, each stretch with its reason.</summary>
    public IEnumerable<NightsAsideView> NightsAside => item.Facts.Exclusions.Select((x, i) => new NightsAsideView(i, x.Label, x.From, x.To, x.Reason));

    /// <summary>What stops it or a part of it.</summary>
    public IEnumerable<FaultView> Faults => report.Value.Faults.Select(FaultView.Of);

    /// <summary>Works a trial out.</summary>
    internal static TrialReport Report(Register register, TrialFacts trial, double[]? readings)
    {
        var set = register.SetFacts;
        return TrialAnalysis.Of(trial, TrialReadings.Unpack(readings ?? []), register.Winters(trial.WeatherStationId)?.Recorded ?? new Dictionary<int, WeatherYear>(), register.Catalogue, set.Heat());
    }
}

/// <summary>Help in planning a trial.</summary>
internal static class TrialDesignFields
{
    /// <summary>Most that a house under trial is taken to save in planning: nothing saves more, and a trial that shows less than nothing is as rough as one that shows nothing.</summary>
    internal const double MostSaving = 0.9;

    /// <summary>Weeks for a width.</summary>
    internal static WeeksView Weeks(double weekSd, double saving, double halfWidthPoints)
    {
        var weeks = new TrialDesign(weekSd, Math.Clamp(saving, 0, MostSaving)).Weeks(AskedRange.Of(nameof(halfWidthPoints), halfWidthPoints, 0.5, 50) / 100);
        return new(halfWidthPoints, weeks?.InUse, weeks?.Idle);
    }
}
