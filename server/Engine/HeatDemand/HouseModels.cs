using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Retrofits;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>Fills what a house does not say and refuses what cannot be.</summary>
public static class HouseModels
{
    private const string UsualCovering = "doublefilm";

    /// <summary>A house ready for reckoning.</summary>
    /// <param name="house">What is known of it.</param>
    /// <param name="catalogue">Coverings, heaters, plans, defaults.</param>
    /// <param name="settings">What the study assumes of every house.</param>
    /// <param name="firstSeason">Year of the July of the first season; film and heater ages are reckoned to it.</param>
    /// <param name="fuel">Fuel of its supply group, where the house tells no heater.</param>
    /// <returns>The model, null when a fault stops it, and the faults.</returns>
    public static (HouseModel? Model, IReadOnlyList<Fault> Faults) Of(HouseFacts house, Catalogue catalogue, HeatSettings settings, int firstSeason, FuelKind fuel = FuelKind.Propane)
    {
        var faults = HouseChecks.Of(house, catalogue, firstSeason);
        if (faults.Count > 0)
        {
            return (null, faults);
        }

        var taken = new List<DefaultUsed>();
        var (roof, sideWall, ridge) = HouseOutline.Of(house);
        var geometry = new HouseGeometry(roof, house.WidthM, house.LengthM, sideWall, ridge, house.Bays);
        if (house.RidgeM is null)
        {
            taken.Add(new("ridgeM", "height of the ridge", ridge, "m", "by shape, common practice"));
        }

        var roofCovering = Covering(house, SurfacePart.Roof, UsualCovering, taken, catalogue.Find(CatalogueKind.Covering, UsualCovering)?.Title);
        var sideCovering = Covering(house, SurfacePart.SideWalls, roofCovering, null);
        var endCovering = Covering(house, SurfacePart.EndWalls, roofCovering, taken);
        double U(string code) => settings.LossLevel * catalogue.Value(CatalogueKind.Covering, code, "uValue");
        var air = house.AirChangesPerHour ?? TakeAir(AirDefault(roofCovering), FilmCondition.Worst(house.Surfaces));
        var life = catalogue.Value(CatalogueKind.Covering, roofCovering, "lifeYears", 4);
        var roofOn = house.Surfaces.FirstOrDefault(s => s.Part == SurfacePart.Roof)?.InstalledOn;
        var cover = geometry.RoofM2 + geometry.SideWallsM2;
        var plan = house.HeatingPlanCode ?? "spring";
        var periods = house.HeatingPeriods;
        if (periods.Count == 0)
        {
            periods = catalogue.Find(CatalogueKind.HeatingPlan, plan)!.Periods;
            if (house.HeatingPlanCode is null)
            {
                taken.Add(new("heatingPeriods", "months heated: February to May, 60 F by night", 0, string.Empty, "common practice, no source; it moves the answer most"));
            }
        }

        var below = ridge - HouseChecks.UnderRidgeM;
        var edge = house.CurtainHeightM ?? Math.Min(Math.Max(catalogue.Default("curtainHeightM"), sideWall), below);
        var model = new HouseModel
        {
            Facts = house,
            Geometry = geometry,
            Catalogue = catalogue,
            RoofU = U(roofCovering),
            SideU = U(sideCovering),
            EndU = U(endCovering),
            RoofCovering = roofCovering,
            RoofFilms = (int)catalogue.Value(CatalogueKind.Covering, roofCovering, "films"),
            FilmGapM = house.FilmGapM ?? catalogue.Default("filmGapM"),
            FilmLifeYears = life,
            FilmDueYear = house.FilmDueYear ?? NextDue(roofOn?.Year, life, firstSeason),
            FilmRenewalUsd = cover * catalogue.Value(CatalogueKind.Covering, roofCovering, "renewalUsdPerM2"),
            AirChangesPerHour = air,
            PurgeVolumesPerDay = house.PurgeVolumesPerDay ?? settings.PurgeVolumesPerDay,
            PerimeterWPerMK = house.PerimeterWPerMK ?? catalogue.Default("perimeter"),
            SunShare = catalogue.Value(CatalogueKind.Covering, roofCovering, "solar") * catalogue.Default("sunToHeat"),
            CarryOver = settings.CarryOver,
            Periods = periods,
            CurtainHeightM = edge,
            CurtainShape = house.CurtainShape ?? CurtainShape.Flat,
            CurtainTopM = house.CurtainTopM ?? house.CurtainShape switch { CurtainShape.Sloped => below, CurtainShape.SlopeFlatSlope => (edge + below) / 2, _ => edge },
            Heaters = HeaterModels.Of(house, catalogue, firstSeason, fuel, taken),
            DefaultsUsed = taken,
        };
        return (model, []);

        double TakeAir(string name, string? condition)
        {
            var value = catalogue.Find(CatalogueKind.Default, "house")!.Values[name];
            var taking = FilmCondition.AirChanges(value, condition);
            taken.Add(new("airChangesPerHour", condition is null ? "air changes an hour" : $"air changes an hour, covering {condition}", taking, value.Unit, value.Source ?? string.Empty));
            return taking;
        }
    }

    /// <summary>The calendar year a part is next due: its year plus whole lives, not before the first season.</summary>
    internal static int NextDue(int? installedYear, double lifeYears, int firstSeason)
    {
        var life = Math.Max(1, (int)Math.Round(lifeYears));
        var due = (installedYear ?? firstSeason - life / 2) + life;
        return due < firstSeason ? firstSeason : due;
    }

    private static string AirDefault(string covering) => covering switch
    {
        "singlefilm" => "airChangesSingleFilm",
        "glass" => "airChangesGlass",
        "twinwall" => "airChangesTwinwall",
        _ => "airChangesFilm",
    };

    private static string Covering(HouseFacts house, SurfacePart part, string otherwise, List<DefaultUsed>? taken, string? title = null)
    {
        var said = house.Surfaces.FirstOrDefault(s => s.Part == part)?.CoveringCode;
        if (said is null)
        {
            taken?.Add(new("surfaces", part == SurfacePart.Roof ? "covering of the roof: " + (title ?? otherwise).ToLowerInvariant() : "covering of the ends: as the roof", 0, string.Empty, "common practice, no source"));
        }

        return said ?? otherwise;
    }
}
