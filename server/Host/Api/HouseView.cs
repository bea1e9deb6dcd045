using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Engine.Weather;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A member business.</summary>
[Name("Farm")]
public sealed partial class FarmView(Register register, Item<FarmFacts> item)
{
    /// <summary>Identifier.</summary>
    [Id] public string Id => item.Id;

    /// <summary>Revision.</summary>
    public int Revision => (int)item.Revision;

    /// <summary>Name.</summary>
    public string Name => item.Remarks.Name ?? "unnamed";

    /// <summary>Place.</summary>
    public string? Place => item.Remarks.Place;

    /// <summary>Identifier of its station.</summary>
    [Id] public string? StationId => item.Facts.WeatherStationId;

    /// <summary>Station, marked where only its monthly normals are known.</summary>
    public string? StationName => item.Facts.WeatherStationId is { } id && register.Stations.TryGetValue(id, out var s) ? NormalsMark.Name(s) : null;

    /// <summary>Floor of its houses, m2.</summary>
    public double FloorAreaM2 => Own.Sum(h => h.Facts.Bays * h.Facts.WidthM * h.Facts.LengthM);

    /// <summary>Its houses.</summary>
    public IEnumerable<HouseView> Houses => Own.Select(h => new HouseView(register, h));

    private IEnumerable<Item<HouseFacts>> Own => register.Houses.Values.Where(h => h.Facts.FarmId == item.Id).OrderBy(h => h.Remarks.Name, StringComparer.Ordinal);
}

/// <summary>Areas and outline.</summary>
[Name("HouseGeometry")]
public sealed record GeometryView(double RoofM2, double SideWallsM2, double EndWallsM2, double FloorM2, double PerimeterM, double VolumeM3, double RidgeM, double SideWallM, double OverallWidthM, double LengthM, double CurtainHeightM, double FilmGapM, int RoofFilms, IEnumerable<PointView> Profile);

/// <summary>A point, metres.</summary>
[Name("Point")]
public sealed record PointView(double X, double Y);

/// <summary>A season's heat of one option in the middling recorded winter, or in one made from monthly normals where that is said.</summary>
[Name("HouseHeat")]
public sealed record HeatView(
    IEnumerable<double> DemandKwhByMonth, double DemandKwh, double FuelKwh, string SeasonName, double RoofKwh, double SideWallsKwh, double EndWallsKwh, double PerimeterKwh, double AirKwh, double PurgeKwh,
    double SolarUsedKwh, double CarriedKwh, double PeakKw, double DesignKw, double DesignC, double? HeaterOutputKw, double ColdHours, double UndeliveredKwh, bool FromNormals);

/// <summary>What the model reckons against what was billed.</summary>
[Name("BackCheck")]
public sealed record BackCheckView(string SeasonName, double ReckonedKwhFuel, double BilledKwhFuel, string Verdict);

/// <summary>A default that was taken.</summary>
[Name("DefaultUsed")]
public sealed record DefaultView(string Field, string Title, double Value, string Unit, string Source);

/// <summary>Something a user can mend.</summary>
[Name("Fault")]
public sealed record FaultView(string Code, string? Field, string Message, string Remedy, int? Line, int? Column)
{
    /// <summary>From the engine's fault.</summary>
    internal static FaultView Of(Fault f) => new(f.Code, f.Field, f.Message, f.Remedy, f.Line, f.Column);
}

/// <summary>A heating period.</summary>
[Name("HeatingPeriod")]
public sealed record PeriodView(int FromMonth, int FromDay, int ToMonth, int ToDay, double NightC, double DayC);

/// <summary>A heated structure.</summary>
[Name("House")]
public sealed partial class HouseView(Register register, Item<HouseFacts> item)
{
    private readonly Lazy<(HouseModel? Model, IReadOnlyList<Fault> Faults)> model = new(() => register.Model(item));

    /// <summary>Identifier.</summary>
    [Id] public string Id => item.Id;

    /// <summary>Revision.</summary>
    public int Revision => (int)item.Revision;

    /// <summary>Name.</summary>
    public string Name => item.Remarks.Name ?? "unnamed";

    /// <summary>Farm.</summary>
    public FarmView Farm => new(register, register.Farms[item.Facts.FarmId]);

    /// <summary>Outline.</summary>
    public HouseShape Shape => item.Facts.Shape;

    /// <summary>Width of a bay, metres.</summary>
    public double WidthM => item.Facts.WidthM;

    /// <summary>Length, metres.</summary>
    public double LengthM => item.Facts.LengthM;

    /// <summary>Side wall, metres; null = by shape.</summary>
    public double? SideWallM => item.Facts.SideWallM;

    /// <summary>Ridge, metres; null = by shape.</summary>
    public double? RidgeM => item.Facts.RidgeM;

    /// <summary>Bays.</summary>
    public int Bays => item.Facts.Bays;

    /// <summary>Air changes an hour; null = by covering.</summary>
    public double? AirChangesPerHour => item.Facts.AirChangesPerHour;

    /// <summary>Code of the roof's covering.</summary>
    public string? CoveringCode => item.Facts.Surfaces.FirstOrDefault(s => s.Part == SurfacePart.Roof)?.CoveringCode;

    /// <summary>Plain name of the roof's covering.</summary>
    public string Covering => register.Catalogue.Find(CatalogueKind.Covering, CoveringCode ?? "doublefilm")!.Title;

    /// <summary>Code of the heating plan.</summary>
    public string? HeatingPlanCode => item.Facts.HeatingPlanCode;

    /// <summary>Heating periods in use.</summary>
    public IEnumerable<PeriodView> HeatingPeriods => model.Value.Model?.Periods.Select(p => new PeriodView(p.From.Month, p.From.Day, p.To.Month, p.To.Day, p.NightC, p.DayC)) ?? [];

    /// <summary>Calendar year in which the film is due.</summary>
    public int? FilmDueYear => model.Value.Model?.FilmDueYear;

    /// <summary>Seasonal efficiency of the heater; null = by kind.</summary>
    public double? SeasonalEfficiency => item.Facts.Heaters.Count > 0 ? item.Facts.Heaters[0].SeasonalEfficiency : null;

    /// <summary>Fuel.</summary>
    public FuelKind Fuel => register.Fuel(item.Facts);

    /// <summary>Retrofits already there.</summary>
    public IEnumerable<string> RetrofitsInstalled => item.Facts.RetrofitsInstalled.Select(c => register.Catalogue.Find(CatalogueKind.Retrofit, c)?.Title ?? c);

    /// <summary>Defaults taken.</summary>
    public IEnumerable<DefaultView> FromDefaults => model.Value.Model?.DefaultsUsed.Select(d => new DefaultView(d.Field, d.Title, d.Value, d.Unit, d.Source)) ?? [];

    /// <summary>Faults that stop it.</summary>
    public IEnumerable<FaultView> Faults => model.Value.Faults.Select(FaultView.Of);

    /// <summary>Areas and outline.</summary>
    public GeometryView? Geometry => model.Value.Model is { Geometry: var g } m
        ? new(g.RoofM2, g.SideWallsM2, g.EndWallsM2, g.FloorM2, g.PerimeterM, g.VolumeM3, g.RidgeM, g.SideWallM, g.OverallWidthM, g.LengthM, m.CurtainHeightM, m.FilmGapM, m.RoofFilms, g.Profile().Select(p => new PointView(p.X, p.Y)))
        : null;

    /// <summary>Options, "as it stands" first.</summary>
    public IEnumerable<OptionView> Options => [new OptionView(register, item, new("none", [])), .. (register.OptionSet(item.Id)?.Facts.Options ?? []).Select(o => new OptionView(register, item, o))];

    /// <summary>Revision of the option set, to save it.</summary>
    public int? OptionSetRevision => (int?)register.OptionSet(item.Id)?.Revision;

    /// <summary>Heat in the middling winter.</summary>
    public HeatView? Heat(string optionKey = "none")
    {
        if (model.Value.Model is not { } house || register.Middling(item.Facts) is not { } year)
        {
            return null;
        }

        var facts = register.OptionSet(item.Id)?.Facts.Options.FirstOrDefault(o => o.Key == optionKey);
        var option = facts is null ? OptionModels.AsItStands(house) : OptionModels.Of(house, facts).Model;
        if (option is null)
        {
            return null;
        }

        var heat = HeatBalance.Season(option, year);
        var design = year.TempC.Order().ElementAt((int)(0.01 * year.Hours));
        var (l, parts) = (heat.Losses, heat.Losses.PartsKwh);
        return new(heat.DemandKwh, heat.TotalKwh, heat.TotalKwh / option.Efficiency, NormalsMark.Season(year), parts[0], parts[1], parts[2], parts[3], parts[4], l.PurgeKwh, l.SunUsedKwh, l.CarriedKwh,
            heat.PeakKw, HeatBalance.DesignKw(option, design, everythingInPlace: true), design, double.IsInfinity(option.OutputW) ? null : option.OutputW / 1000, heat.ColdHours, heat.UndeliveredKwh, year.FromNormals);
    }
}
