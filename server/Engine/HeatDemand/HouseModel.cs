using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Retrofits;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>A default that was taken because the house does not say.</summary>
/// <param name="Field">Field of the house.</param>
/// <param name="Title">Plain name.</param>
/// <param name="Value">What was taken.</param>
/// <param name="Unit">Unit, SI.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record DefaultUsed(string Field, string Title, double Value, string Unit, string Source);

/// <summary>A heater with everything filled in.</summary>
/// <param name="Fuel">What it burns.</param>
/// <param name="Efficiency">Seasonal efficiency on the higher heating value.</param>
/// <param name="OutputKw">Most heat it can deliver, kW; infinite when not known.</param>
/// <param name="DueYear">Calendar year in which it is at the end of its life.</param>
/// <param name="RenewalUsd">Price of a new one of its kind, US dollars.</param>
/// <param name="NewEfficiency">Seasonal efficiency of a standard new one.</param>
public sealed record HeaterModel(FuelKind Fuel, double Efficiency, double OutputKw, int DueYear, double RenewalUsd, double NewEfficiency);

/// <summary>A house ready for reckoning: every unknown filled, every default on record. Made by <see cref="HouseModels.Of"/>.</summary>
public sealed record HouseModel
{
    /// <summary>Id of the house, as quotes name it; empty where it has none.</summary>
    public string HouseId { get; init; } = string.Empty;

    /// <summary>What was entered.</summary>
    public required HouseFacts Facts { get; init; }

    /// <summary>Areas and volume.</summary>
    public required HouseGeometry Geometry { get; init; }

    /// <summary>The catalogue it was filled from.</summary>
    public required Catalogue Catalogue { get; init; }

    /// <summary>U of the roof, level included, W/m2K.</summary>
    public required double RoofU { get; init; }

    /// <summary>U of the side walls, level included, W/m2K.</summary>
    public required double SideU { get; init; }

    /// <summary>U of the end walls, level included, W/m2K.</summary>
    public required double EndU { get; init; }

    /// <summary>Films on the roof: 2 double, 1 single film or pane, 0 other.</summary>
    public required int RoofFilms { get; init; }

    /// <summary>Code of the roof's covering.</summary>
    public required string RoofCovering { get; init; }

    /// <summary>Gap between the films, metres.</summary>
    public required double FilmGapM { get; init; }

    /// <summary>Calendar year in which the film is next renewed.</summary>
    public required int FilmDueYear { get; init; }

    /// <summary>Life of the covering, years.</summary>
    public required double FilmLifeYears { get; init; }

    /// <summary>Price of renewing the covering, US dollars.</summary>
    public required double FilmRenewalUsd { get; init; }

    /// <summary>Air changes an hour through leaks.</summary>
    public required double AirChangesPerHour { get; init; }

    /// <summary>Volumes a night vented against humidity.</summary>
    public required double PurgeVolumesPerDay { get; init; }

    /// <summary>Edge loss, W/mK.</summary>
    public required double PerimeterWPerMK { get; init; }

    /// <summary>Share of the sun on the floor that becomes useful heat: transmittance x share that warms.</summary>
    public required double SunShare { get; init; }

    /// <summary>Share of the day's surplus sun that serves the next night.</summary>
    public required double CarryOver { get; init; }

    /// <summary>Heating periods.</summary>
    public required IReadOnlyList<HeatingPeriod> Periods { get; init; }

    /// <summary>Height of a curtain's edge, metres; a flat one runs at it.</summary>
    public required double CurtainHeightM { get; init; }

    /// <summary>Line of a curtain.</summary>
    public required CurtainShape CurtainShape { get; init; }

    /// <summary>Height of a curtain's top, metres; where it is flat, its edge.</summary>
    public required double CurtainTopM { get; init; }

    /// <summary>Heaters, at least one.</summary>
    public required IReadOnlyList<HeaterModel> Heaters { get; init; }

    /// <summary>Defaults taken.</summary>
    public required IReadOnlyList<DefaultUsed> DefaultsUsed { get; init; }

    /// <summary>Most heat all heaters can deliver, kW.</summary>
    public double OutputKw => Heaters.Sum(h => h.OutputKw);

    /// <summary>Roof and side walls that film covers, m2.</summary>
    public double CoverM2 => Geometry.RoofM2 + Geometry.SideWallsM2;
}
