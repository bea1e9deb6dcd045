using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;

namespace FarmPortfolio.Host.Loading;

/// <summary>A row of the houses' sheet, in SI; null = not told. Without <see cref="House"/> the row is a farm alone.</summary>
public sealed record HouseRow(int Line, string Farm)
{
    /// <summary>Place of the farm.</summary>
    public string? Place { get; init; }

    /// <summary>Name of the farm's weather station.</summary>
    public string? Station { get; init; }

    /// <summary>Sales of a year, whole cents.</summary>
    public long? SalesCents { get; init; }

    /// <summary>Name of the house.</summary>
    public string? House { get; init; }

    /// <summary>Outline.</summary>
    public HouseShape Shape { get; init; }

    /// <summary>Roof of a bay.</summary>
    public HouseShape? BayRoof { get; init; }

    /// <summary>Bays.</summary>
    public int Bays { get; init; } = 1;

    /// <summary>Width, metres.</summary>
    public double WidthM { get; init; }

    /// <summary>Length, metres.</summary>
    public double LengthM { get; init; }

    /// <summary>Side wall, metres.</summary>
    public double? SideWallM { get; init; }

    /// <summary>Ridge, metres.</summary>
    public double? RidgeM { get; init; }

    /// <summary>Code of the covering.</summary>
    public string? CoveringCode { get; init; }

    /// <summary>Year the covering was put on.</summary>
    public int? FilmYear { get; init; }

    /// <summary>Code of the heating plan.</summary>
    public string? PlanCode { get; init; }

    /// <summary>Own heating period.</summary>
    public HeatingPeriod? Period { get; init; }

    /// <summary>Code of the heater.</summary>
    public string? HeaterCode { get; init; }

    /// <summary>Year the heater was set.</summary>
    public int? HeaterYear { get; init; }

    /// <summary>Rated input, kW.</summary>
    public double? InputKw { get; init; }

    /// <summary>Seasonal efficiency.</summary>
    public double? Efficiency { get; init; }

    /// <summary>Fuel.</summary>
    public FuelKind? Fuel { get; init; }

    /// <summary>Name of the tank or meter.</summary>
    public string? Supply { get; init; }

    /// <summary>Size of the tank, litres.</summary>
    public double? TankSizeL { get; init; }

    /// <summary>Air changes an hour.</summary>
    public double? AirChangesPerHour { get; init; }

    /// <summary>Codes of retrofits already there.</summary>
    public IReadOnlyList<string> Installed { get; init; } = [];

    /// <summary>Fuel of one winter that went through its tank or meter, for this house or for all behind it.</summary>
    public FuelUsed? Used { get; init; }
}

/// <summary>Fuel of one winter as a row tells it.</summary>
/// <param name="Quantity">Quantity in <paramref name="Unit"/>, above 0.</param>
/// <param name="Unit">Unit as written; whether the fuel is sold in it is not asked yet.</param>
/// <param name="Season">Year of the July in which that season begins; null = the last winter.</param>
/// <param name="Column">Column of the quantity, from 1.</param>
public sealed record FuelUsed(double Quantity, string Unit, int? Season, int? Column);

/// <summary>Rows of a houses' sheet.</summary>
/// <param name="All">Sound rows in the order of the file.</param>
public sealed record HouseRows(IReadOnlyList<HouseRow> All);
