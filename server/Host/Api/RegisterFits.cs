using System.Collections.Concurrent;
using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand.Calibration;
using FarmPortfolio.Engine.Weather;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Api;

/// <summary>Tanks and meters fitted to their bills, each once a request.</summary>
public sealed partial class Register
{
    private readonly ConcurrentDictionary<string, GroupFit> fits = new();

    /// <summary>The fuel record of a tank or meter; null = none.</summary>
    /// <param name="groupId">Tank or meter.</param>
    /// <returns>The record.</returns>
    public Item<FuelRecordFacts>? RecordOf(string groupId) => Records.Values.FirstOrDefault(r => r.Facts.SupplyGroupId == groupId);

    /// <summary>What the bills of a tank or meter say.</summary>
    /// <param name="groupId">Tank or meter.</param>
    /// <returns>The fit.</returns>
    public GroupFit Fit(string groupId) => fits.GetOrAdd(groupId, id => Fit(id, RecordOf(id)?.Facts));

    /// <summary>What a record would say.</summary>
    /// <param name="groupId">Tank or meter.</param>
    /// <param name="record">The record.</param>
    /// <returns>The fit.</returns>
    public GroupFit Fit(string groupId, FuelRecordFacts? record) =>
        Calibrations.Of(Groups[groupId].Facts, record, Behind(groupId), WintersOf(groupId), FitSpreads.Of(Catalogue), Heating, OnNormals(groupId));

    /// <summary>The houses behind a tank or meter that can be reckoned.</summary>
    /// <param name="groupId">Tank or meter.</param>
    /// <returns>Houses.</returns>
    public IReadOnlyList<BehindTank> Behind(string groupId) => BehindTank.Of(groupId, Houses.Values.Select(h => KeyValuePair.Create(h.Id, h.Facts)), (id, _) => Model(Houses[id]).Model);

    /// <summary>The winters that a tank or meter's houses met, as they were recorded: none made from normals, for bills go by exact days.</summary>
    /// <param name="groupId">Tank or meter.</param>
    /// <returns>By season year.</returns>
    public IReadOnlyDictionary<int, WeatherYear> WintersOf(string groupId) =>
        Farms.TryGetValue(Groups[groupId].Facts.FarmId, out var farm) && Winters(farm.Facts.WeatherStationId) is { } winters ? winters.Recorded : new Dictionary<int, WeatherYear>();

    /// <summary>Whether the station of a tank or meter's farm is known by monthly normals only.</summary>
    /// <param name="groupId">Tank or meter.</param>
    /// <returns>True where no exact day of it is known.</returns>
    public bool OnNormals(string groupId) => Farms.TryGetValue(Groups[groupId].Facts.FarmId, out var farm) && Winters(farm.Facts.WeatherStationId)?.Facts.IsNormalsOnly() == true;

    /// <summary>The tank or meter whose record speaks for a house: of several the one that gives most of its heat.</summary>
    /// <param name="house">House.</param>
    /// <returns>Its identifier; null = no record.</returns>
    public string? Recorded(HouseFacts house) =>
        house.Supplies.Where(s => Groups.ContainsKey(s.SupplyGroupId) && RecordOf(s.SupplyGroupId)?.Facts.Entries.Count > 0).MaxBy(s => s.Share)?.SupplyGroupId;

    /// <summary>Data grade of a house.</summary>
    /// <param name="house">House.</param>
    /// <returns>Grade.</returns>
    public DataGrade Grade(HouseFacts house) => Recorded(house) is { } group ? Fit(group).Grade : DataGrade.C;
}
