using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Host.Studies;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>Own parameters of one fuel's price; null = the default or the fit.</summary>
public sealed record PriceSettingsInput(
    FuelKind Fuel, LevelMeaning LevelMeaning, double? LevelUsdPerUnit, double? RetailAdderUsdPerUnit, double? GrowthPerYear, double? ShortReversionPerYear, double? LongReversionPerYear, double? LongShare, double? VolatilityPerYear)
{
    /// <summary>A set of assumptions with these parameters in it.</summary>
    internal ScenarioSetFacts On(ScenarioSetFacts set)
    {
        var own = set.Prices.FirstOrDefault(p => p.Fuel == Fuel) ?? new() { Fuel = Fuel };
        return set with
        {
            LevelMeaning = LevelMeaning,
            Prices = [.. set.Prices.Where(p => p.Fuel != Fuel), own with
            {
                LevelUsdPerUnit = LevelUsdPerUnit,
                RetailAdderUsdPerUnit = RetailAdderUsdPerUnit,
                GrowthPerYear = GrowthPerYear,
                ShortReversionPerYear = ShortReversionPerYear,
                LongReversionPerYear = LongReversionPerYear,
                LongShare = LongShare,
                VolatilityPerYear = VolatilityPerYear,
            }],
        };
    }
}

/// <summary>Where a price may stand after some years.</summary>
[Name("PriceOutlook")]
public sealed record PriceOutlookView(double Years, double P10, double Middle, double Mean, double P90);

/// <summary>The price model under one choice of parameters.</summary>
[Name("PriceModel")]
public sealed record PriceModelView(
    string Key, string Name, double ShortReversionPerYear, double? HalfLifeMonths, double LongReversionPerYear, double LongShare, double VolatilityPerYear, double LongVolatility, double ShortVolatility, double GrowthPerYear,
    IEnumerable<PriceOutlookView> Outlook)
{
    /// <summary>From an engine's model.</summary>
    internal static PriceModelView Of(string key, string name, PriceModel m, ScenarioSetFacts set, FuelPriceAssumption? own)
    {
        var levelYears = Math.Max(0, 12 * (set.FirstSeason - m.LastMonthOn.Year) + 7 - m.LastMonthOn.Month) / 12.0;
        return new(
            key, name, m.ShortReversion, m.ShortReversion > 0 ? 12 * Math.Log(2) / m.ShortReversion : null, m.LongReversion, m.Volatility > 0 ? m.LongVolatility / m.Volatility : 1, m.Volatility, m.LongVolatility, m.ShortVolatility, m.Growth,
            PriceOutlook.Of(m, set.LevelMeaning == LevelMeaning.Expected, own?.LevelUsdPerUnit, levelYears).Select(o => new PriceOutlookView(o.Years, o.P10, o.Middle, o.Mean, o.P90)));
    }
}

/// <summary>One parameter of a fuel's price that can be set.</summary>
[Name("PriceKnob")]
public sealed record PriceKnobView(string Field, string Title, string Unit, double? Own, double? Usual, double Low, double High, string Words);

/// <summary>Both factors fitted freely to the record.</summary>
[Name("PriceFreeFit")]
public sealed record PriceFreeFitView(double ShortReversionPerYear, double LongShare, double VolatilityPerYear, double HalfLifeMonths, double HalfLifeLowMonths, double HalfLifeHighMonths, bool IsDetermined);

/// <summary>How one fuel's price is assumed to move, and what moves when that is changed.</summary>
[Name("PriceSettings")]
public sealed record PriceSettingsView(
    FuelKind Fuel, string SeriesName, string Unit, string LastMonth, LevelMeaning LevelMeaning, IEnumerable<PriceKnobView> Knobs, IEnumerable<PriceModelView> Models, PriceFreeFitView? FreeFit, IEnumerable<FaultView> Faults);

/// <summary>An option under the price settings in use and under those tried.</summary>
[Name("PriceTrial")]
public sealed record PriceTrialView(SensitivityEndView Now, SensitivityEndView Tried);

/// <summary>Price settings.</summary>
public sealed partial class Query
{
    /// <summary>How a fuel's price is assumed to move: its parameters, the model in use, with the defaults, fitted freely and as tried. Null where there is no record that can be used.</summary>
    public static PriceSettingsView? PriceSettings([FromServices] Register register, FuelKind fuel, PriceSettingsInput? trial = null)
    {
        if (fuel == FuelKind.WoodPellets && !register.PricesInUse.ContainsKey(fuel))
        {
            return WithoutRecord(register.SetFacts, trial);
        }

        if (!register.PricesInUse.TryGetValue(fuel, out var id) || PriceRecord.Of(register.Prices[id].Facts).Record is not { } record)
        {
            return null;
        }

        var (series, set) = (register.Prices[id], register.SetFacts);
        var own = set.Prices.FirstOrDefault(p => p.Fuel == fuel);
        var usual = PriceFit.Of(record, series.Facts.Class);
        PriceModelView Model(string key, string name, ScenarioSetFacts with, FuelPriceAssumption? assumed) => PriceModelView.Of(key, name, PriceFit.Of(record, series.Facts.Class, assumed), with, assumed);
        var models = new List<PriceModelView> { Model("now", "in use", set, own), Model("usual", "the defaults", set, new() { Fuel = fuel, LevelUsdPerUnit = own?.LevelUsdPerUnit }) };
        var free = record.LogPrices.Length >= PriceDiagnostics.FiveYears ? PriceFreeFit.Of(record, series.Facts.Class) : null;
        if (free is not null)
        {
            models.Add(Model("free", "fitted freely", set, free.On(new() { Fuel = fuel, LevelUsdPerUnit = own?.LevelUsdPerUnit, LongReversionPerYear = own?.LongReversionPerYear, GrowthPerYear = own?.GrowthPerYear })));
        }

        var tried = trial?.Fuel == fuel ? trial.On(set) : null;
        var faults = tried is null ? [] : ScenarioChecks.Of(tried);
        if (tried is not null && faults.Count == 0)
        {
            models.Add(Model("tried", "as typed", tried, tried.Prices.First(p => p.Fuel == fuel)));
        }

        return new(
            fuel, series.Remarks.Name ?? "unnamed", series.Facts.Unit, $"{record.LastMonthOn:yyyy-MM}", set.LevelMeaning, PriceKnobs.Of(own, usual, series.Facts, fuel), models,
            free is null ? null : new(free.ShortReversionPerYear, free.LongShare, free.VolatilityPerYear, free.HalfLifeMonths, 12 * Math.Log(2) / free.ReversionHigh, 12 * Math.Log(2) / free.ReversionLow, free.IsDetermined),
            faults.Select(FaultView.Of));
    }

    /// <summary>Wood pellets, of which no public monthly record ships: level, growth, spread and return are assumptions alone.</summary>
    private static PriceSettingsView WithoutRecord(ScenarioSetFacts set, PriceSettingsInput? trial)
    {
        var before = new DateOnly(set.FirstSeason, 6, 1);
        FuelPriceAssumption? Own(ScenarioSetFacts of) => of.Prices.FirstOrDefault(p => p.Fuel == FuelKind.WoodPellets);
        PriceModelView Model(string key, string name, ScenarioSetFacts with, FuelPriceAssumption? own) => PriceModelView.Of(key, name, PelletPrices.Usual(own, before), with, own);
        var tried = trial?.Fuel == FuelKind.WoodPellets ? trial.On(set) : null;
        var faults = tried is null ? [] : ScenarioChecks.Of(tried);
        var models = new List<PriceModelView> { Model("now", "in use", set, Own(set)), Model("usual", "the defaults", set, null) };
        if (tried is not null && faults.Count == 0)
        {
            models.Add(Model("tried", "as typed", tried, Own(tried)));
        }

        return new(FuelKind.WoodPellets, "no record", "ton", $"{before:yyyy-MM}", set.LevelMeaning, PriceKnobs.OfPellets(Own(set), PelletPrices.Usual(null, before)), models, null, faults.Select(FaultView.Of));
    }
}

/// <summary>An option under other price settings.</summary>
public sealed partial class OptionView
{
    /// <summary>The house run alone under the assumptions as they are now and with price settings tried, on the houses of the newest done study; null where it has no result there or a setting cannot be.</summary>
    public PriceTrialView? PriceTrial([FromServices] PriceTrialRuns runs, PriceSettingsInput trial, CancellationToken cancellationToken = default)
    {
        var tried = trial.On(register.SetFacts);
        return ScenarioChecks.Of(tried).Count == 0 && register.Newest is { } study && runs.Of(register.Viewer, study, register.Now.Prices, house.Id, option.Key, [register.SetFacts, tried], cancellationToken) is { } ends
            ? new(SensitivityEndView.Of(ends[0]) with { Words = "in use" }, SensitivityEndView.Of(ends[1]) with { Words = "as typed" })
            : null;
    }
}
