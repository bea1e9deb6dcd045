using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Weather;
using FarmPortfolio.Host.Loading;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>What of a house the form saves; facts it does not show stay as they are.</summary>
public sealed record HouseInput
{
    /// <summary>Name.</summary>
    public required string Name { get; init; }

    /// <summary>Width of a bay, metres.</summary>
    public required double WidthM { get; init; }

    /// <summary>Length, metres.</summary>
    public required double LengthM { get; init; }

    /// <summary>Side wall, metres; null = by shape.</summary>
    public double? SideWallM { get; init; }

    /// <summary>Ridge, metres; null = by shape.</summary>
    public double? RidgeM { get; init; }

    /// <summary>Air changes an hour; null = by covering.</summary>
    public double? AirChangesPerHour { get; init; }

    /// <summary>Code of the roof's covering; null = as it is, told or not.</summary>
    public string? CoveringCode { get; init; }

    /// <summary>Code of the heating plan; null = as it is, and so are own heating periods. Another plan than before takes own periods out.</summary>
    public string? HeatingPlanCode { get; init; }

    /// <summary>Seasonal efficiency; null = by kind.</summary>
    public double? SeasonalEfficiency { get; init; }

    /// <summary>Coverings, periods, heaters, supplies and worth; null = they stay as they are.</summary>
    public HousePartsInput? Parts { get; init; }
}

/// <summary>A house to save.</summary>
public sealed record SaveHouseInput([property: Id] string Id, int ExpectedRevision, [property: Id] string RequestId, HouseInput House, bool? CheckOnly);

/// <summary>Own figures of an option to save; null = the catalogue's.</summary>
public sealed record SaveOptionInput([property: Id] string HouseId, string Key, int ExpectedRevision, [property: Id] string RequestId, double? OutlayUsd, double? UpkeepUsdPerYear, double? WatchingHoursPerWeek, double? ConsumablesUsdPerYear);

/// <summary>Assumptions to save.</summary>
public sealed record SaveScenarioSetInput(
    [property: Id] string Id, int ExpectedRevision, [property: Id] string RequestId, double DiscountRate, double UpkeepGrowth, double WageUsdPerHour, double ElectricityUsdPerKwh, double OffsetTrendKPerYear, double LossLevel, string Seed, LevelMeaning LevelMeaning);

/// <summary>What came of a save.</summary>
public sealed record SavePayload([property: Id] string? ChangeId, bool Conflict, IEnumerable<FaultView> Faults)
{
    /// <summary>Where correlations were to be saved that four prices cannot have: the nearest that they can. Empty otherwise.</summary>
    public IEnumerable<NearestCorrelationsView> NearestCorrelations { get; init; } = [];
}

/// <summary>A study asked for.</summary>
public sealed record StudyPayload(StudyView Study, bool SameAs);

/// <summary>What can be changed.</summary>
public sealed partial class Mutation
{
    /// <summary>Saves a house, or only checks it.</summary>
    public static SavePayload SaveHouse([FromServices] Register register, SaveHouseInput input)
    {
        if (!register.Houses.TryGetValue(input.Id, out var house))
        {
            return Missing("house");
        }

        var (h, f) = (input.House, house.Facts);
        if (string.IsNullOrWhiteSpace(h.Name))
        {
            return new(null, false, [new("EMPTY", "name", "The house has no name.", "Give it a name.", null, null)]);
        }

        if (h.Parts?.Years(register.SetFacts.FirstSeason) is { Count: > 0 } years)
        {
            return new(null, false, years.Select(FaultView.Of));
        }

        var roof = f.Surfaces.FirstOrDefault(s => s.Part == SurfacePart.Roof);
        var facts = f with
        {
            WidthM = h.WidthM,
            LengthM = h.LengthM,
            SideWallM = h.SideWallM,
            RidgeM = h.RidgeM,
            AirChangesPerHour = h.AirChangesPerHour,
            HeatingPlanCode = h.HeatingPlanCode ?? f.HeatingPlanCode,
            HeatingPeriods = h.HeatingPlanCode is null || h.HeatingPlanCode == f.HeatingPlanCode ? f.HeatingPeriods : [],
            Surfaces = h.CoveringCode is null ? f.Surfaces : [new(SurfacePart.Roof, h.CoveringCode, roof?.InstalledOn, roof?.Condition), .. f.Surfaces.Where(s => s.Part != SurfacePart.Roof)],
            Heaters = [.. f.Heaters.Select((heater, i) => i == 0 ? heater with { SeasonalEfficiency = h.SeasonalEfficiency } : heater)],
        };
        facts = h.Parts?.On(facts) ?? facts;
        var faults = new List<Fault>(register.Model(house with { Facts = facts }).Faults);
        if (h.Parts is { } parts && (parts.Supplies is not null || parts.Heaters is not null))
        {
            faults.AddRange(SupplyChecks.Of(facts, id => register.Groups.TryGetValue(id, out var g) && g.Facts.FarmId == facts.FarmId ? g.Facts.Fuel : null));
        }

        if (faults.Count > 0 || input.CheckOnly == true)
        {
            return new(null, false, faults.Select(FaultView.Of));
        }

        return Saved(register.Items.Save(register.Viewer, register.Coop.Id, $"{h.Name.Trim()} is changed", input.RequestId, [new(ItemKind.House, input.Id, input.ExpectedRevision, facts, house.Remarks with { Name = h.Name.Trim() })]));
    }

    /// <summary>Saves own figures of an option.</summary>
    public static SavePayload SaveOption([FromServices] Register register, SaveOptionInput input)
    {
        if (register.OptionSet(input.HouseId) is not { } set || !register.Houses.TryGetValue(input.HouseId, out var house) || set.Facts.Options.All(o => o.Key != input.Key))
        {
            return Missing("option");
        }

        var options = set.Facts.Options.Select(o => o.Key != input.Key ? o : o with
        {
            Overrides = (o.Overrides ?? new()) with
            {
                OutlayCents = input.OutlayUsd is { } usd ? (long)Math.Round(usd * 100) : null,
                UpkeepUsdPerYear = input.UpkeepUsdPerYear,
                WatchingHoursPerWeek = input.WatchingHoursPerWeek,
                ConsumablesUsdPerYear = input.ConsumablesUsdPerYear,
            },
        }).ToList();
        var faults = register.Model(house).Model is { } model ? OptionChecks.Of(model, options.First(o => o.Key == input.Key)) : [];
        return faults.Count > 0
            ? new(null, false, faults.Select(FaultView.Of))
            : Saved(register.Items.Save(register.Viewer, register.Coop.Id, $"figures of {input.Key}, {house.Remarks.Name}, are changed", input.RequestId, [new(ItemKind.OptionSet, set.Id, input.ExpectedRevision, set.Facts with { Options = options }, set.Remarks)]));
    }

    /// <summary>Saves assumptions.</summary>
    public static SavePayload SaveScenarioSet([FromServices] Register register, SaveScenarioSetInput input)
    {
        if (register.Set is not { } set || set.Id != input.Id)
        {
            return Missing("set of assumptions");
        }

        if (!long.TryParse(input.Seed, System.Globalization.CultureInfo.InvariantCulture, out var seed))
        {
            return new(null, false, [new("NOT_A_NUMBER", "seed", $"\"{input.Seed}\" is no whole number.", "Give a whole number.", null, null)]);
        }

        var facts = set.Facts with
        {
            DiscountRate = input.DiscountRate,
            UpkeepGrowth = input.UpkeepGrowth,
            WageUsdPerHour = input.WageUsdPerHour,
            ElectricityUsdPerKwh = input.ElectricityUsdPerKwh,
            OffsetTrendKPerYear = input.OffsetTrendKPerYear,
            LossLevel = input.LossLevel,
            Seed = seed,
            LevelMeaning = input.LevelMeaning,
        };
        var faults = ScenarioChecks.Of(facts);
        return faults.Count > 0
            ? new(null, false, faults.Select(FaultView.Of))
            : Saved(register.Items.Save(register.Viewer, register.Coop.Id, "assumptions are changed", input.RequestId, [new(ItemKind.ScenarioSet, set.Id, input.ExpectedRevision, facts, set.Remarks)]));
    }

    /// <summary>Lets the futures of a fuel roll on from a price record.</summary>
    public static SavePayload UsePrices([FromServices] Register register, [Id] string seriesId, [Id] string requestId)
    {
        if (register.Set is not { } set || !register.Prices.TryGetValue(seriesId, out var series))
        {
            return Missing("price record");
        }

        var fuel = series.Facts.Fuel;
        var own = set.Facts.Prices.FirstOrDefault(p => p.Fuel == fuel) ?? new() { Fuel = fuel };
        var facts = set.Facts with { Prices = [.. set.Facts.Prices.Where(p => p.Fuel != fuel), own with { PriceSeriesId = seriesId }] };
        return Saved(register.Items.Save(register.Viewer, register.Coop.Id, $"{series.Remarks.Name} is used", requestId, [new(ItemKind.ScenarioSet, set.Id, set.Revision, facts, set.Remarks)]));
    }

    /// <summary>Undoes a change.</summary>
    public static SavePayload Undo([FromServices] Register register, [Id] string changeId, [Id] string requestId) => Saved(register.Items.Undo(register.Viewer, changeId, requestId, register.Coop.Id));

    /// <summary>Asks for a study of the co-op as it holds now; an equal one is answered instead of run again.</summary>
    public static StudyPayload StartStudy([FromServices] Register register)
    {
        var (study, same) = register.Jobs.Start(register.Viewer, register.Coop.Id);
        return new(new(register, study), same);
    }

    /// <summary>Cancels a study.</summary>
    public static StudyView? CancelStudy([FromServices] Register register, [Id] string studyId)
    {
        register.Jobs.Cancel(register.Viewer, studyId);
        return register.Studies.Find(register.Viewer, studyId) is { } s ? new(register, s) : null;
    }

    private static SavePayload Missing(string what) => new(null, false, [new("NOT_FOUND", "id", $"There is no such {what}.", "Reload the page.", null, null)]);

    internal static SavePayload Saved(SaveOutcome outcome) => new(outcome.ChangeId, outcome.ConflictItemId is not null, outcome.Faults.Select(FaultView.Of));
}
