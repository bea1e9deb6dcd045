namespace FarmPortfolio.Engine.Farms;

/// <summary>The outline of a house or of one of its bays.</summary>
public enum HouseShape
{
    /// <summary>Half-ellipse over the width, standing on the side walls (height 0 = on the ground).</summary>
    Hoop,

    /// <summary>Two circular arcs that meet in a pointed ridge, on side walls.</summary>
    GothicArch,

    /// <summary>Two straight slopes on side walls.</summary>
    Gable,

    /// <summary>Several bays side by side that share gutters, each with the roof of <see cref="HouseFacts.BayRoof"/>.</summary>
    GutterConnected,
}

/// <summary>The part of a house that a covering lies on.</summary>
public enum SurfacePart
{
    /// <summary>Roof or arch above the side walls.</summary>
    Roof,

    /// <summary>Both side walls, gutter or hip to ground.</summary>
    SideWalls,

    /// <summary>Both end walls, gables included.</summary>
    EndWalls,
}

/// <summary>One part of a house and what covers it.</summary>
/// <param name="Part">Which part.</param>
/// <param name="CoveringCode">Code of a covering in the catalogue.</param>
/// <param name="InstalledOn">When it was put on; null = not known.</param>
/// <param name="Condition">State: "sound", "worn" or "torn"; null = sound. The worst of the house's parts moves the air changes where <see cref="HouseFacts.AirChangesPerHour"/> is not told.</param>
public sealed record SurfaceFacts(SurfacePart Part, string CoveringCode, DateOnly? InstalledOn = null, string? Condition = null);

/// <summary>One stretch of the year with its set points.</summary>
/// <param name="From">First day heated.</param>
/// <param name="To">Last day heated; before <paramref name="From"/> = over New Year.</param>
/// <param name="NightC">Night set point, degrees Celsius.</param>
/// <param name="DayC">Day set point, degrees Celsius.</param>
public sealed record HeatingPeriod(MonthDay From, MonthDay To, double NightC, double DayC);

/// <summary>A heater that stands in a house.</summary>
/// <param name="HeaterCode">Code of a heater kind in the catalogue.</param>
/// <param name="Fuel">What it burns.</param>
/// <param name="InputKw">Rated input of all its burners together in kW (higher heating value); null = large enough.</param>
/// <param name="SeasonalEfficiency">Delivered heat / fuel heat (higher heating value) over a season, above 0 to 1 (heat pumps: above 1); null = the catalogue's.</param>
/// <param name="InstalledOn">When it was set; null = not known.</param>
public sealed record HeaterFacts(string HeaterCode, FuelKind Fuel, double? InputKw = null, double? SeasonalEfficiency = null, DateOnly? InstalledOn = null);

/// <summary>Which supply group feeds which heater.</summary>
/// <param name="SupplyGroupId">The tank bank or meter.</param>
/// <param name="HeaterNo">Index into <see cref="HouseFacts.Heaters"/>, from 0.</param>
/// <param name="Share">Share of the house's season heat from this heater, 0 to 1; the shares of a house sum to 1.</param>
public sealed record HouseSupply(string SupplyGroupId, int HeaterNo = 0, double Share = 1);

/// <summary>What of a heated structure can move a number. Null = unknown; the defaults fill it and list what was taken.</summary>
public sealed record HouseFacts
{
    /// <summary>The farm it stands on.</summary>
    public required string FarmId { get; init; }

    /// <summary>Key of this house's own random draws; made once from farm and house name, kept through renaming.</summary>
    public required long DrawKey { get; init; }

    /// <summary>Outline.</summary>
    public required HouseShape Shape { get; init; }

    /// <summary>Roof of a bay where <see cref="Shape"/> is gutter-connected: hoop, Gothic arch or gable.</summary>
    public HouseShape? BayRoof { get; init; }

    /// <summary>Width in metres; of one bay where gutter-connected.</summary>
    public required double WidthM { get; init; }

    /// <summary>Length in metres.</summary>
    public required double LengthM { get; init; }

    /// <summary>Height of the side wall (or gutter) in metres; null = by shape.</summary>
    public double? SideWallM { get; init; }

    /// <summary>Height of the ridge over the floor in metres; null = by shape.</summary>
    public double? RidgeM { get; init; }

    /// <summary>Number of bays, 1 unless gutter-connected.</summary>
    public int Bays { get; init; } = 1;

    /// <summary>Coverings by part; a part that is missing takes the default double film.</summary>
    public IReadOnlyList<SurfaceFacts> Surfaces { get; init; } = [];

    /// <summary>Gap between two films in metres; null = 0.15.</summary>
    public double? FilmGapM { get; init; }

    /// <summary>Calendar year in which the film is next renewed; null = from its age.</summary>
    public int? FilmDueYear { get; init; }

    /// <summary>Air changes an hour through leaks; null = by covering and construction.</summary>
    public double? AirChangesPerHour { get; init; }

    /// <summary>Volumes of air a day vented on purpose against humidity; null = the study's default.</summary>
    public double? PurgeVolumesPerDay { get; init; }

    /// <summary>Heat lost at the edge of the floor, W per metre of perimeter and K; null = bare, 0.8 Btu/h ft F.</summary>
    public double? PerimeterWPerMK { get; init; }

    /// <summary>The house's heating periods; empty = from <see cref="HeatingPlanCode"/>, or the default plan.</summary>
    public IReadOnlyList<HeatingPeriod> HeatingPeriods { get; init; } = [];

    /// <summary>Code of the crop heating plan that the periods came from; null = own periods.</summary>
    public string? HeatingPlanCode { get; init; }

    /// <summary>Heaters; empty = one of the default kind on the supply group's fuel.</summary>
    public IReadOnlyList<HeaterFacts> Heaters { get; init; } = [];

    /// <summary>Which supply group feeds which heater.</summary>
    public IReadOnlyList<HouseSupply> Supplies { get; init; } = [];

    /// <summary>Codes of the retrofits already there.</summary>
    public IReadOnlyList<string> RetrofitsInstalled { get; init; } = [];

    /// <summary>Height of a curtain's edge at the sides in metres (a flat one runs at it); null = 7 ft or the side wall, whichever is higher.</summary>
    public double? CurtainHeightM { get; init; }

    /// <summary>Line of a curtain across a bay; null = flat.</summary>
    public CurtainShape? CurtainShape { get; init; }

    /// <summary>Height of the top of a sloped or slope-flat-slope curtain in metres; null = a foot under the ridge, or half-way to there where it is level in the middle.</summary>
    public double? CurtainTopM { get; init; }

    /// <summary>Crop sales in US dollars a square metre of floor and year; null = not counted.</summary>
    public double? CropUsdPerM2 { get; init; }

    /// <summary>Per cent of crop sales lost per per cent of light lost; null = 0, said to be not counted.</summary>
    public double? YieldPerLight { get; init; }

    /// <summary>Crop space that counts when lost: share of sales at stake per share of floor, 0 to 1; null = 0, said to be not counted.</summary>
    public double? SpaceWorth { get; init; }

    /// <summary>Worth of summer shading in US dollars a square metre of floor and year; null = 0, said to be not counted.</summary>
    public double? ShadingUsdPerM2 { get; init; }
}
