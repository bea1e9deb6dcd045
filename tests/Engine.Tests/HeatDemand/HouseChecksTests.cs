using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Tests.Studies;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Tests.HeatDemand;

/// <summary>What cannot be of a house: each is named with its field, what is wrong, and what would be right.</summary>
public class HouseChecksTests
{
    /// <summary>What is wrong, its field, words of the message, words of the remedy.</summary>
    public static TheoryData<string, string, string, string> Wrong => new()
    {
        { "width", "widthM", "width of -3 m (-9.8 ft) is outside", "1.83 to 60.96 m (6 to 200 ft); if you typed feet" },
        { "length", "lengthM", "length of -29.261 m (-96 ft) is outside", "Give 2 to 400 m (6.6 to 1,312 ft)." },
        { "wall", "sideWallM", "side wall of -1 m (-3.3 ft)", "0 to 12 m (0 to 39.4 ft)" },
        { "digits", "lengthM", "length of 1E+300 m (3.28E+300 ft) is outside", "Give 2 to 400 m (6.6 to 1,312 ft)." },
        { "curtain", "curtainHeightM", "curtain at 9 m (29.5 ft) does not fit under a ridge at 4.55 m (14.9 ft)", "1 to 4.25 m (3.3 to 13.9 ft)" },
        { "curtainTop", "curtainTopM", "cannot rise from 2 m (6.6 ft) to 6 m (19.7 ft)", "under" },
        { "efficiency", "heaters", "efficiency of 1.2 cannot be", "80 % is 0.8" },
        { "input", "heaters", "input of 3.52 W (12 Btu/h) cannot be: did you mean 12,000 Btu/h?", "1 to 20,000 kW (3,412 to" },
        { "filmYear", "surfaces", "covering of the year 1850", "from 1950 to 2027" },
        { "heaterYear", "heaters", "heater of the year 2028", "from 1950 to 2027" },
        { "airChanges", "airChangesPerHour", "The air changes an hour of 30 is outside", "Give 0.05 to 20." },
        { "exchanged", "heatingPeriods", "8 C (46 F), lies under the night's, 15 C (59 F)", "Are night and day exchanged?" },
        { "setPoints", "heatingPeriods", "60 C (140 F) by night", "choose Fahrenheit" },
    };

    [Theory, MemberData(nameof(Wrong))]
    public void It_is_said_where_and_what_would_be_right(string what, string field, string message, string remedy)
    {
        var fault = Assert.Single(HouseChecks.Of(House(what), Catalogue.BuiltIn, 2026));
        Assert.Equal(field, fault.Field);
        Assert.Contains(message, fault.Message, StringComparison.Ordinal);
        Assert.Contains(remedy, what == "curtainTop" ? fault.Message : fault.Remedy, StringComparison.Ordinal);
        Assert.Null(HouseModels.Of(House(what), Catalogue.BuiltIn, new(), 2026).Model);
    }

    [Fact]
    public void The_last_year_the_least_heater_and_a_slightly_cooler_day_can_be() => Assert.Empty(HouseChecks.Of(House("latest"), Catalogue.BuiltIn, 2026));

    [Theory]
    [InlineData("resistance", FuelKind.Electricity, null)]
    [InlineData("heatpump", FuelKind.Electricity, null)]
    [InlineData("pellet", FuelKind.WoodPellets, null)]
    [InlineData("heatpump", FuelKind.Propane, "does not take Propane")]
    [InlineData("pellet", FuelKind.NaturalGas, "does not take NaturalGas")]
    [InlineData("power", FuelKind.WoodPellets, "does not take WoodPellets")]
    [InlineData("condensing", FuelKind.Electricity, "does not take Electricity")]
    public void Pellets_and_electricity_want_heaters_of_their_own(string code, FuelKind fuel, string? message)
    {
        var faults = HouseChecks.Of(House(string.Empty) with { Heaters = [new(code, fuel)] }, Catalogue.BuiltIn, 2026);
        if (message is null)
        {
            Assert.Empty(faults);
            return;
        }

        var fault = Assert.Single(faults);
        Assert.Equal(("WRONG_FUEL", "heaters"), (fault.Code, fault.Field));
        Assert.Contains(message, fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sound_house_has_no_fault() => Assert.Empty(HouseChecks.Of(House(string.Empty), Catalogue.BuiltIn, 2026));

    [Fact]
    public void Set_points_that_the_air_never_falls_under_are_said_with_the_coldest_hour()
    {
        HeatingPeriod[] summer = [new(new(7, 1), new(8, 31), 2, 3)];
        var fault = SetPointChecks.Of(summer, TestHouse.Winters)!;
        Assert.Equal(("NO_HEAT", "heatingPeriods"), (fault.Code, fault.Field));
        Assert.Contains("in 3 winters, the highest set point is 3 C (37 F)", fault.Message, StringComparison.Ordinal);
        Assert.Null(SetPointChecks.Of([new(new(7, 1), new(6, 30), 2, 3)], TestHouse.Winters));
        Assert.Null(SetPointChecks.Of(summer, []));
    }

    [Fact]
    public void A_house_that_never_needs_heat_is_left_out_of_a_study_by_name()
    {
        var portfolio = SmallPortfolio.Of(2);
        portfolio = portfolio with { Houses = portfolio.Houses.ToDictionary(h => h.Key, h => h.Key == "h1" ? h.Value with { HeatingPlanCode = null, HeatingPeriods = [new(new(7, 10), new(8, 10), 1, 2)] } : h.Value) };
        var (study, faults) = Engine.Studies.StudyRun.Run(portfolio, 1, null, CancellationToken.None);
        Assert.Empty(faults);
        Assert.Contains(study!.LeftOut, l => l.ItemId == "h1" && l.Fault.Code == "NO_HEAT");
        Assert.All(study.Options, o => Assert.Equal("h0", o.HouseId));
    }

    private static HouseFacts House(string what)
    {
        var house = TestHouse.Facts;
        return what switch
        {
            "width" => house with { WidthM = -3 },
            "length" => house with { LengthM = -96 * Us.FootM },
            "digits" => house with { LengthM = 1e300 },
            "wall" => house with { SideWallM = -1 },
            "curtain" => house with { CurtainHeightM = 9 },
            "curtainTop" => house with { CurtainShape = CurtainShape.Sloped, CurtainHeightM = 2, CurtainTopM = 6 },
            "efficiency" => house with { Heaters = [new("power", FuelKind.Propane, 100, 1.2)] },
            "input" => house with { Heaters = [new("power", FuelKind.Propane, 12 * Us.BtuKwh)] },
            "filmYear" => house with { Surfaces = [new(SurfacePart.Roof, "doublefilm", new(1850, 9, 1))] },
            "heaterYear" => house with { Heaters = [new("power", FuelKind.Propane, 100, InstalledOn: new(2028, 1, 1))] },
            "airChanges" => house with { AirChangesPerHour = 30 },
            "exchanged" => house with { HeatingPeriods = [new(new(11, 1), new(4, 30), 15, 8)] },
            "latest" => house with { Heaters = [new("power", FuelKind.Propane, 1, InstalledOn: new(2027, 12, 31))], HeatingPeriods = [new(new(11, 1), new(4, 30), 15, 13)] },
            "setPoints" => house with { HeatingPeriods = [new(new(11, 1), new(4, 30), 60, 65)] },
            _ => house,
        };
    }
}
