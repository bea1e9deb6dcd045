using System.Text.Json;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand.Calibration;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.Tests.Studies;

/// <summary>A station of monthly normals in a study: it gets the pool's winters, moves nobody else's figures, and no bill is held against its days.</summary>
public class NormalsStationsTests
{
    private static readonly JsonSerializerOptions Fields = new() { IncludeFields = true };
    private static readonly WeatherStationFacts Normals = new() { LatitudeDeg = 44.5, LongitudeDeg = 0, ElevationM = 200, MonthlyMeanC = [-8, -6, -1, 6, 13, 18, 21, 20, 15, 9, 3, -4] };
    private static readonly StationWinters Unmade = new(Normals, new Dictionary<int, WeatherYear>());

    [Fact]
    public void A_house_on_normals_is_reckoned_and_leaves_every_other_house_as_it_was()
    {
        var before = SmallPortfolio.Of(1);
        var portfolio = Beside(SmallPortfolio.Of(2));
        Assert.Equal(1, portfolio.Stations["n"].DeparturesFrom);
        Assert.Equal(before.Stations["w"].Years.Keys.Order(), portfolio.Stations["n"].Years.Keys.Order());
        Assert.All(portfolio.Stations["n"].Years.Values, y => Assert.True(y.FromNormals));
        var (one, two) = (Run(before), Run(portfolio));
        Assert.Empty(two.LeftOut);
        Assert.Equal(one.FuturesSha256, two.FuturesSha256);
        Assert.Equal(JsonSerializer.Serialize(one.Options, Fields), JsonSerializer.Serialize(two.Options.Where(o => o.HouseId == "h0"), Fields));

        // the normals are of a colder place than the record, so the same house burns more there
        var (here, there) = (two.Options.First(o => o.HouseId == "h0" && o.Key == "foam-now"), two.Options.First(o => o.HouseId == "h1" && o.Key == "foam-now"));
        Assert.True(there.HeatSavedKwh > 0 && there.HeatSavedKwh != here.HeatSavedKwh, $"{there.HeatSavedKwh} kWh there, {here.HeatSavedKwh} here");
    }

    [Fact]
    public void Same_bits_on_one_and_on_eight_threads()
    {
        var portfolio = Beside(SmallPortfolio.Of(2));
        Assert.Equal(JsonSerializer.Serialize(Run(portfolio, 1), Fields), JsonSerializer.Serialize(Run(portfolio, 8), Fields));
    }

    [Fact]
    public void Without_any_record_one_middling_winter_is_made_and_its_spread_is_missing()
    {
        var stations = NormalsStations.Laid(new Dictionary<string, StationWinters> { ["w"] = Unmade }, []);
        Assert.Equal(0, stations["w"].DeparturesFrom);
        Assert.Equal(NormalsYear.StandInSeason, Assert.Single(stations["w"].Years).Key);
        var result = Run(SmallPortfolio.Of(1) with { Stations = stations });
        Assert.Empty(result.LeftOut);
        Assert.All(result.CostBySeason, c => Assert.True(c.P50 > 0));
        var recorded = SmallPortfolio.Of(1);
        var one = recorded.Stations["w"].Years.Take(1).ToDictionary();
        Assert.Equal("TOO_FEW_WINTERS", Assert.Single(StudyFutures.Of(recorded with { Stations = new Dictionary<string, StationWinters> { ["w"] = recorded.Stations["w"] with { Years = one } } }).Faults).Code);
    }

    [Fact]
    public void Stations_that_all_have_records_are_handed_back_untouched()
    {
        var stations = SmallPortfolio.Of().Stations;
        Assert.Same(stations, NormalsStations.Laid(stations, []));
        Assert.Same(stations["w"].Years, stations["w"].Recorded);
    }

    [Fact]
    public void Bills_are_not_held_against_days_that_were_made()
    {
        var small = SmallPortfolio.Of(1);
        FuelEntry Winter(double gal) => new(FuelEntryKind.Total, new(2015, 7, 1), new(2016, 6, 30), gal, "gal", gal * HeatingValues.KwhPerUnit(FuelKind.Propane, "gal")!.Value);
        var described = Calibrations.Of(small.SupplyGroups["g"], new() { SupplyGroupId = "g", Entries = [Winter(1000)] }, LossFits.Behind(small, "g"), small.Stations["w"].Years).Multiplier!.Value;
        var bills = small with
        {
            FuelRecords = new Dictionary<string, FuelRecordFacts>
            {
                ["g"] = new() { SupplyGroupId = "g", Entries = [Winter(1.2 * 1000 / described)] },
            },
        };
        var recorded = LossFits.Of(bills)["h0"];
        Assert.Equal(1.2, recorded.Mean, 1e-6);
        var onNormals = LossFits.Of(bills with { Stations = NormalsStations.Laid(new Dictionary<string, StationWinters> { ["w"] = Unmade, ["other"] = small.Stations["w"] }, []) })["h0"];
        Assert.Equal((1, DataGrade.B), (onNormals.Mean, onNormals.Grade));
        var words = Calibrations.Of(small.SupplyGroups["g"], bills.FuelRecords["g"], LossFits.Behind(small, "g"), new Dictionary<int, WeatherYear>(), normalsOnly: true);
        Assert.Null(words.Multiplier);
        Assert.Contains("monthly normals only", words.Verdict, StringComparison.Ordinal);
        Assert.Contains("daily or hourly record", Assert.Single(words.Raise), StringComparison.Ordinal);
    }

    /// <summary>The second house on a farm of its own whose station is known by normals only.</summary>
    private static Portfolio Beside(Portfolio p) => p with
    {
        Farms = new Dictionary<string, FarmFacts>(p.Farms) { ["m"] = new() { WeatherStationId = "n" } },
        Houses = p.Houses.ToDictionary(h => h.Key, h => h.Key == "h1" ? h.Value with { FarmId = "m", Supplies = [new("k")] } : h.Value),
        SupplyGroups = new Dictionary<string, SupplyGroupFacts>(p.SupplyGroups) { ["k"] = p.SupplyGroups["g"] with { FarmId = "m" } },
        Stations = NormalsStations.Laid(new Dictionary<string, StationWinters>(p.Stations) { ["n"] = Unmade }, p.Set.WinterPool),
    };

    private static StudyResult Run(Portfolio portfolio, int threads = 2) => StudyRun.Run(portfolio, threads, null, CancellationToken.None).Result!;
}
