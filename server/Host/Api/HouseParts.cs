using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Retrofits;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>What covers a part of a house.</summary>
[Name("Surface")]
public sealed record SurfaceView(SurfacePart Part, string CoveringCode, int? InstalledYear, string? Condition);

/// <summary>A heater that stands in a house.</summary>
[Name("Heater")]
public sealed record HeaterView(string HeaterCode, FuelKind Fuel, double? InputKw, double? SeasonalEfficiency, int? InstalledYear);

/// <summary>Which tank or meter feeds which heater.</summary>
[Name("HouseSupply")]
public sealed record HouseSupplyView([property: Id] string SupplyGroupId, int HeaterNo, double Share);

/// <summary>Covering of a part; no code = as the roof.</summary>
public sealed record SurfaceInput(SurfacePart Part, string CoveringCode, int? InstalledYear, string? Condition);

/// <summary>A stretch of the year with its set points.</summary>
public sealed record HeatingPeriodInput(int FromMonth, int FromDay, int ToMonth, int ToDay, double NightC, double DayC);

/// <summary>A heater.</summary>
public sealed record HeaterInput(string HeaterCode, FuelKind Fuel, double? InputKw, double? SeasonalEfficiency, int? InstalledYear);

/// <summary>A supply.</summary>
public sealed record HouseSupplyInput([property: Id] string SupplyGroupId, int HeaterNo, double Share);

/// <summary>What light and space are worth; null = not counted.</summary>
public sealed record HouseWorthInput(double? CropUsdPerM2, double? YieldPerLight, double? SpaceWorth, double? ShadingUsdPerM2);

/// <summary>The parts of a house beside its size. What is null stays as it is.</summary>
public sealed record HousePartsInput
{
    /// <summary>Coverings by part.</summary>
    public IReadOnlyList<SurfaceInput>? Surfaces { get; init; }

    /// <summary>Own heating periods; empty = those of the plan.</summary>
    public IReadOnlyList<HeatingPeriodInput>? HeatingPeriods { get; init; }

    /// <summary>Heaters; empty = the usual one.</summary>
    public IReadOnlyList<HeaterInput>? Heaters { get; init; }

    /// <summary>Tanks and meters.</summary>
    public IReadOnlyList<HouseSupplyInput>? Supplies { get; init; }

    /// <summary>Codes of retrofits already there.</summary>
    public IReadOnlyList<string>? RetrofitsInstalled { get; init; }

    /// <summary>Outline.</summary>
    public HouseShape? Shape { get; init; }

    /// <summary>Bays.</summary>
    public int? Bays { get; init; }

    /// <summary>What light and space are worth.</summary>
    public HouseWorthInput? Worth { get; init; }

    /// <summary>Years that cannot be; they are looked at before <see cref="On"/>, which needs a day of the calendar.</summary>
    /// <param name="firstSeason">Year of the July of the study's first season.</param>
    /// <returns>Faults; empty = all can be.</returns>
    internal IReadOnlyList<Fault> Years(int firstSeason) =>
        [.. (Surfaces ?? []).Select(s => s.InstalledYear is { } y ? Engine.HeatDemand.HouseYears.Of("surfaces", "covering", y, firstSeason) : null)
            .Concat((Heaters ?? []).Select(h => h.InstalledYear is { } y ? Engine.HeatDemand.HouseYears.Of("heaters", "heater", y, firstSeason) : null)).OfType<Fault>()];

    /// <summary>The facts with these parts.</summary>
    internal HouseFacts On(HouseFacts f) => f with
    {
        Shape = Shape ?? f.Shape,
        Bays = (Shape ?? f.Shape) == HouseShape.GutterConnected ? Bays ?? f.Bays : 1,
        Surfaces = Surfaces is null ? f.Surfaces : [.. Surfaces.Where(s => s.CoveringCode.Length > 0).Select(s => new SurfaceFacts(s.Part, s.CoveringCode, s.InstalledYear is { } y ? new(y, 9, 1) : null, s.Condition))],
        HeatingPeriods = HeatingPeriods is null ? f.HeatingPeriods : [.. HeatingPeriods.Select(p => new HeatingPeriod(new(p.FromMonth, p.FromDay), new(p.ToMonth, p.ToDay), p.NightC, p.DayC))],
        Heaters = Heaters is null ? f.Heaters : [.. Heaters.Select(h => new HeaterFacts(h.HeaterCode, h.Fuel, h.InputKw, h.SeasonalEfficiency, h.InstalledYear is { } y ? new(y, 10, 1) : null))],
        Supplies = Supplies is null ? f.Supplies : [.. Supplies.Select(s => new HouseSupply(s.SupplyGroupId, s.HeaterNo, s.Share))],
        RetrofitsInstalled = RetrofitsInstalled ?? f.RetrofitsInstalled,
        CropUsdPerM2 = Worth is null ? f.CropUsdPerM2 : Worth.CropUsdPerM2,
        YieldPerLight = Worth is null ? f.YieldPerLight : Worth.YieldPerLight,
        SpaceWorth = Worth is null ? f.SpaceWorth : Worth.SpaceWorth,
        ShadingUsdPerM2 = Worth is null ? f.ShadingUsdPerM2 : Worth.ShadingUsdPerM2,
    };
}

/// <summary>The parts of a house as they were entered.</summary>
public sealed partial class HouseView
{
    /// <summary>Coverings as entered.</summary>
    public IEnumerable<SurfaceView> Surfaces => item.Facts.Surfaces.Select(s => new SurfaceView(s.Part, s.CoveringCode, s.InstalledOn?.Year, s.Condition));

    /// <summary>Own heating periods; empty = those of the plan.</summary>
    public IEnumerable<PeriodView> OwnPeriods => item.Facts.HeatingPeriods.Select(p => new PeriodView(p.From.Month, p.From.Day, p.To.Month, p.To.Day, p.NightC, p.DayC));

    /// <summary>Heaters as entered.</summary>
    public IEnumerable<HeaterView> Heaters => item.Facts.Heaters.Select(h => new HeaterView(h.HeaterCode, h.Fuel, h.InputKw, h.SeasonalEfficiency, h.InstalledOn?.Year));

    /// <summary>Tanks and meters.</summary>
    public IEnumerable<HouseSupplyView> Supplies => item.Facts.Supplies.Select(s => new HouseSupplyView(s.SupplyGroupId, s.HeaterNo, s.Share));

    /// <summary>Crop sales, US dollars a m2 and year.</summary>
    public double? CropUsdPerM2 => item.Facts.CropUsdPerM2;

    /// <summary>Per cent of sales lost per per cent of light.</summary>
    public double? YieldPerLight => item.Facts.YieldPerLight;

    /// <summary>Worth of lost space.</summary>
    public double? SpaceWorth => item.Facts.SpaceWorth;

    /// <summary>Worth of summer shading, US dollars a m2 and year.</summary>
    public double? ShadingUsdPerM2 => item.Facts.ShadingUsdPerM2;
}

/// <summary>One answer for many houses; null = each keeps its own.</summary>
public sealed record ChangeHousesInput
{
    /// <summary>Name of the request.</summary>
    [Id] public required string RequestId { get; init; }

    /// <summary>Houses.</summary>
    [Id] public required IReadOnlyList<string> HouseIds { get; init; }

    /// <summary>Covering of the roof.</summary>
    public string? CoveringCode { get; init; }

    /// <summary>Year the roof's covering was put on.</summary>
    public int? FilmYear { get; init; }

    /// <summary>Heating plan.</summary>
    public string? HeatingPlanCode { get; init; }

    /// <summary>Air changes an hour.</summary>
    public double? AirChangesPerHour { get; init; }
}

/// <summary>Many houses at once.</summary>
public sealed partial class Mutation
{
    /// <summary>Changes many houses as one change; a house that cannot take it holds all back.</summary>
    public static SavePayload ChangeHouses([FromServices] Register register, ChangeHousesInput input)
    {
        var (items, faults) = (new List<Storage.Items.ItemToSave>(), new List<Fault>());
        if (input.FilmYear is { } year && Engine.HeatDemand.HouseYears.Of("filmYear", "covering", year, register.SetFacts.FirstSeason) is { } wrong)
        {
            return new(null, false, [FaultView.Of(wrong)]);
        }

        foreach (var id in input.HouseIds.Distinct(StringComparer.Ordinal))
        {
            if (!register.Houses.TryGetValue(id, out var house))
            {
                return Missing("house");
            }

            var f = house.Facts;
            var roof = f.Surfaces.FirstOrDefault(s => s.Part == SurfacePart.Roof) ?? new(SurfacePart.Roof, "doublefilm");
            var changed = f with
            {
                Surfaces = input.CoveringCode is null && input.FilmYear is null
                    ? f.Surfaces
                    : [roof with { CoveringCode = input.CoveringCode ?? roof.CoveringCode, InstalledOn = input.FilmYear is { } y ? new(y, 9, 1) : roof.InstalledOn }, .. f.Surfaces.Where(s => s.Part != SurfacePart.Roof)],
                HeatingPlanCode = input.HeatingPlanCode ?? f.HeatingPlanCode,
                HeatingPeriods = input.HeatingPlanCode is null ? f.HeatingPeriods : [],
                AirChangesPerHour = input.AirChangesPerHour ?? f.AirChangesPerHour,
            };
            faults.AddRange(Engine.HeatDemand.HouseChecks.Of(changed, register.Catalogue, register.SetFacts.FirstSeason).Select(x => x with { Message = $"{register.Farms[f.FarmId].Remarks.Name}, {house.Remarks.Name}: {x.Message}" }));
            items.Add(new(Storage.Items.ItemKind.House, id, house.Revision, changed, house.Remarks));
        }

        if (items.Count == 0)
        {
            faults.Add(new("EMPTY", "houseIds", "No house is chosen.", "Choose one or more."));
        }

        return faults.Count > 0
            ? new(null, false, faults.Select(FaultView.Of))
            : Saved(register.Items.Save(register.Viewer, register.Coop.Id, $"{items.Count} {(items.Count == 1 ? "house is" : "houses are")} changed at once", input.RequestId, items));
    }
}
