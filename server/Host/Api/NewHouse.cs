using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;
using FarmPortfolio.Host.Loading;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>Nine answers about a house; null = not known, then a default is taken and named.</summary>
public sealed record NewHouseInput
{
    /// <summary>Name of the request.</summary>
    [Id] public required string RequestId { get; init; }

    /// <summary>Only look: nothing is kept.</summary>
    public bool? CheckOnly { get; init; }

    /// <summary>Farm; null = a new one.</summary>
    [Id] public string? FarmId { get; init; }

    /// <summary>Name of a new farm.</summary>
    public string? FarmName { get; init; }

    /// <summary>Place of a new farm.</summary>
    public string? Place { get; init; }

    /// <summary>Weather station of a new farm.</summary>
    [Id] public string? StationId { get; init; }

    /// <summary>Name of the house.</summary>
    public required string Name { get; init; }

    /// <summary>Outline.</summary>
    public required HouseShape Shape { get; init; }

    /// <summary>Bays; null = 1.</summary>
    public int? Bays { get; init; }

    /// <summary>Width of a bay, metres.</summary>
    public required double WidthM { get; init; }

    /// <summary>Length, metres.</summary>
    public required double LengthM { get; init; }

    /// <summary>Side wall, metres.</summary>
    public double? SideWallM { get; init; }

    /// <summary>Covering.</summary>
    public string? CoveringCode { get; init; }

    /// <summary>Year the covering was put on.</summary>
    public int? FilmYear { get; init; }

    /// <summary>First day heated, such as 15 Feb.</summary>
    public string? HeatedFrom { get; init; }

    /// <summary>Last day heated.</summary>
    public string? HeatedTo { get; init; }

    /// <summary>Night set point, degrees Celsius.</summary>
    public double? NightC { get; init; }

    /// <summary>Day set point, degrees Celsius.</summary>
    public double? DayC { get; init; }

    /// <summary>Heater.</summary>
    public string? HeaterCode { get; init; }

    /// <summary>Year it was set.</summary>
    public int? HeaterYear { get; init; }

    /// <summary>Rated input, kW.</summary>
    public double? InputKw { get; init; }

    /// <summary>Fuel; null = that of the farm's only tank or meter.</summary>
    public FuelKind? Fuel { get; init; }

    /// <summary>Name of its tank or meter; null = the farm's only one with the fuel, or a new one.</summary>
    public string? Supply { get; init; }

    /// <summary>What else burns from a new tank or meter.</summary>
    public string? OtherUse { get; init; }

    /// <summary>Price fixed by contract, US dollars a unit; null = the monthly index.</summary>
    public double? FixedPriceUsdPerUnit { get; init; }

    /// <summary>Unit of that price and of the use; null = the fuel's usual one.</summary>
    public string? Unit { get; init; }

    /// <summary>Last day of the fixed price.</summary>
    public DateOnly? FixedUntil { get; init; }

    /// <summary>Fuel used last winter through its tank or meter; null = not known.</summary>
    public double? UsedLastWinter { get; init; }
}

/// <summary>What a house that is not saved yet would need in the middling winter.</summary>
[Name("HousePreview")]
public sealed record HousePreview(FuelKind Fuel, string SeasonName, double FuelKwh, double? ToldKwhFuel, IEnumerable<DefaultView> FromDefaults);

/// <summary>What came of a new house.</summary>
public sealed record NewHousePayload([property: Id] string? HouseId, [property: Id] string? ChangeId, HousePreview? Preview, IEnumerable<FaultView> Faults);

/// <summary>Turns nine answers into a farm, a tank or meter, a house and its usual options.</summary>
internal static class NewHouse
{
    /// <summary>Most that a told use may be over the reckoned one; what lies between 1.25 times and this is shown beside the answer, not refused (common practice, no source).</summary>
    private const double MostTimesReckoned = 20;

    /// <summary>Use that is never refused, kWh of fuel a m2 of floor and winter: over twice the dearest house of the far north (common practice, no source).</summary>
    private const double MostKwhPerM2 = 1500;

    /// <summary>Items and faults of the answers.</summary>
    public static (IReadOnlyList<ItemToSave> Items, List<Fault> Faults, HousePreview? Preview) Of(Register register, NewHouseInput input)
    {
        var faults = new List<Fault>();
        var farm = input.FarmId is { } id && register.Farms.TryGetValue(id, out var known) ? known.Remarks.Name : input.FarmName;
        if (string.IsNullOrWhiteSpace(farm))
        {
            faults.Add(new("EMPTY", "farmName", "The farm has no name.", "Choose a farm, or give a new one a name."));
        }

        if (string.IsNullOrWhiteSpace(input.Name))
        {
            faults.Add(new("EMPTY", "name", "The house has no name.", "Give it a name, such as house 1."));
        }

        if (input.FarmId is null && input.StationId is { } station && !register.Stations.ContainsKey(station))
        {
            faults.Add(new("NOT_FOUND", "stationId", "There is no such weather station.", "Choose one of the list."));
        }

        faults.AddRange(new[] { Year("filmYear", "covering", input.FilmYear), Year("heaterYear", "heater", input.HeaterYear) }.OfType<Fault>());
        var period = Period(input, faults);
        if (faults.Count > 0)
        {
            return ([], faults, null);
        }

        var plan = new FarmsPlan(Known(register), register.Catalogue, register.Ids, register.SetFacts.FirstSeason);
        plan.Add([new HouseRow(0, farm!.Trim())
        {
            Place = input.Place, Station = input.StationId is { } s ? register.Stations[s].Remarks.Name : null, House = input.Name.Trim(), Shape = input.Shape, Bays = input.Bays ?? 1,
            WidthM = input.WidthM, LengthM = input.LengthM, SideWallM = input.SideWallM, CoveringCode = input.CoveringCode, FilmYear = input.FilmYear, Period = period,
            HeaterCode = input.HeaterCode, HeaterYear = input.HeaterYear, InputKw = input.InputKw, Fuel = input.Fuel, Supply = string.IsNullOrWhiteSpace(input.Supply) ? null : input.Supply,
        }]);
        faults.AddRange(plan.Faults.Select(f => f with { Line = null, Field = Field(f.Field) }));
        if (faults.Count > 0 || plan.Items.LastOrDefault(i => i.Kind == ItemKind.House) is not { Facts: HouseFacts facts })
        {
            return ([], faults, null);
        }

        var items = plan.Items.ToList();
        var told = Fuel(register, input, facts, items, faults);
        var preview = Preview(register, facts, items, told);
        if (told is { } kwh && TooMuch(register, input, facts, preview, kwh) is { } much)
        {
            faults.Add(much);
        }

        return (items, faults, preview);

        Fault? Year(string field, string what, int? year) => year is { } y ? HouseYears.Of(field, what, y, register.SetFacts.FirstSeason) : null;
    }

    /// <summary>What a co-op has, for joining.</summary>
    public static KnownFarms Known(Register register) => new(register.Farms.Values, register.Houses.Values, register.Groups.Values, register.Stations.Values, register.Records.Values.Select(r => r.Facts.SupplyGroupId));

    private static string? Field(string? field) => field switch { "farm" => "farmName", "house" => "name", "tank or meter" => "supply", "weather station" => "stationId", _ => field };

    private static HeatingPeriod? Period(NewHouseInput input, List<Fault> faults)
    {
        if (string.IsNullOrWhiteSpace(input.HeatedFrom) && string.IsNullOrWhiteSpace(input.HeatedTo))
        {
            if (input.NightC is null && input.DayC is null)
            {
                return null;
            }

            return new(new(2, 15), new(5, 31), input.NightC ?? Us.C(60), input.DayC ?? Us.C(65));
        }

        var (from, to) = (HouseWords.Day(input.HeatedFrom ?? string.Empty), HouseWords.Day(input.HeatedTo ?? string.Empty));
        foreach (var field in new[] { from is null ? "heatedFrom" : null, to is null ? "heatedTo" : null }.OfType<string>())
        {
            faults.Add(new("NOT_A_DAY", field, "This is no day of the year.", "Write a day such as 15 Feb or 2/15, at both ends."));
        }

        return from is { } f && to is { } t ? new(f, t, input.NightC ?? Us.C(60), input.DayC ?? input.NightC + 5 * Us.DegreeK ?? Us.C(65)) : null;
    }

    /// <summary>Contract, other uses and last winter's use; returns that use in kWh.</summary>
    private static double? Fuel(Register register, NewHouseInput input, HouseFacts facts, List<ItemToSave> items, List<Fault> faults)
    {
        var groupId = facts.Supplies[0].SupplyGroupId;
        var at = items.FindIndex(i => i.Id == groupId);
        var group = at >= 0 ? (SupplyGroupFacts)items[at].Facts! : register.Groups[groupId].Facts;
        if (at >= 0 && !string.IsNullOrWhiteSpace(input.OtherUse))
        {
            group = group with { OtherUses = [new(input.OtherUse.Trim())] };
            items[at] = items[at] with { Facts = group };
        }

        var unit = string.IsNullOrWhiteSpace(input.Unit) ? HeatingValues.UnitsOf(group.Fuel)[0] : input.Unit;
        if (HeatingValues.KwhPerUnit(group.Fuel, unit) is not { } kwh)
        {
            faults.Add(new("UNKNOWN_UNIT", "unit", $"{group.Fuel} is not sold by the \"{unit}\".", $"Choose one of {string.Join(", ", HeatingValues.UnitsOf(group.Fuel))}."));
            return null;
        }

        if (input.FixedPriceUsdPerUnit is { } price)
        {
            if (!(price > 0))
            {
                faults.Add(new("OUT_OF_RANGE", "fixedPriceUsdPerUnit", "A price is above 0.", "Give dollars a unit, such as 2.45, or leave it empty."));
            }
            else if (ContractChecks.TooDear("fixedPriceUsdPerUnit", price, kwh, unit) is { } dear)
            {
                faults.Add(dear);
            }
            else if (register.Contracts.Values.Any(c => c.Facts.SupplyGroupId == groupId))
            {
                faults.Add(new("ALREADY_THERE", "fixedPriceUsdPerUnit", "This tank or meter has a contract already.", "Leave the price empty; change the contract at the tank or meter."));
            }
            else
            {
                items.Add(new(ItemKind.Contract, null, null, new ContractFacts { SupplyGroupId = groupId, Kind = ContractKind.Fixed, Unit = unit, PriceUsdPerUnit = price, EndsOn = input.FixedUntil }, new("fixed price")));
            }
        }

        if (input.UsedLastWinter is not { } used)
        {
            return null;
        }

        if (!(used > 0))
        {
            faults.Add(new("OUT_OF_RANGE", "usedLastWinter", "Last winter's use is above 0.", "Give the quantity, or leave it empty."));
            return null;
        }

        if (register.Records.Values.Any(r => r.Facts.SupplyGroupId == groupId))
        {
            faults.Add(new("ALREADY_THERE", "usedLastWinter", "This tank or meter has a fuel record already.", "Leave the use empty; add it to that record."));
            return null;
        }

        items.Add(UsedFuel.Record(groupId, register.SetFacts.FirstSeason - 1, isLast: true, used, unit, kwh));
        return used * kwh;
    }

    /// <summary>A use that no house has: its figure stands for another unit or has noughts too many. Where the tank or meter feeds other houses, each may use as much.</summary>
    private static Fault? TooMuch(Register register, NewHouseInput input, HouseFacts facts, HousePreview? preview, double toldKwh)
    {
        var supply = facts.Supplies[0].SupplyGroupId;
        var houses = 1 + register.Houses.Values.Count(h => h.Facts.Supplies.Any(s => s.SupplyGroupId == supply));
        var most = houses * Math.Max(MostTimesReckoned * preview?.FuelKwh ?? 0, MostKwhPerM2 * facts.Bays * facts.WidthM * facts.LengthM);
        var kwhPerUnit = toldKwh / input.UsedLastWinter!.Value;
        return toldKwh <= most
            ? null
            : new("OUT_OF_RANGE", "usedLastWinter", FormattableString.Invariant($"A use of {ShortFigure.Of(input.UsedLastWinter.Value, "#,0.#")} in a winter cannot be{(preview is { FuelKwh: > 0 } p ? $": {ShortFigure.Of(toldKwh / p.FuelKwh, "#,0")} times what we reckon" : string.Empty)}."),
                FormattableString.Invariant($"Give what the tank or meter took last winter, at most {most / kwhPerUnit:#,0}, and look at its unit."));
    }

    private static HousePreview? Preview(Register register, HouseFacts facts, List<ItemToSave> items, double? told)
    {
        var station = items.Find(i => i.Id == facts.FarmId)?.Facts is FarmFacts made ? made.WeatherStationId : register.Farms[facts.FarmId].Facts.WeatherStationId;
        var fuel = items.Find(i => i.Id == facts.Supplies[0].SupplyGroupId)?.Facts is SupplyGroupFacts group ? group.Fuel : register.Groups[facts.Supplies[0].SupplyGroupId].Facts.Fuel;
        var set = register.SetFacts;
        if (HouseModels.Of(facts, register.Catalogue, set.Heat(), set.FirstSeason, fuel).Model is not { } model || register.Middling(station) is not { } winter)
        {
            return null;
        }

        var demand = HeatBalance.Season(OptionModels.AsItStands(model), winter).TotalKwh;
        return new(fuel, NormalsMark.Season(winter).TrimEnd(','), demand / model.Heaters[0].Efficiency, told, model.DefaultsUsed.Select(d => new DefaultView(d.Field, d.Title, d.Value, d.Unit, d.Source)));
    }
}
