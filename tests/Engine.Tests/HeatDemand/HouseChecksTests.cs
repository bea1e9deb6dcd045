using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Tests.Studies;

namespace FarmPortfolio.Engine.Tests.HeatDemand;

/// <summary>What cannot be of a house: each is named with its field, what is wrong, and what would be right.</summary>
public class HouseChecksTests
{
    /// <summary>What is wrong, its field, words of the message, words of the remedy.</summary>
    public static TheoryData<string, string, string, string> Wrong => new()
    {
        { "width", "widthM", "width of -3", "between 1.83 and 60.96 m" },
        { "length", "lengthM", "length of -20", "between 2 and 400 m" },
        { "wall", "sideWallM", "side wall of -1", "between 0 and 12 m" },
        { "curtain", "curtainHeightM", "curtain at 9 m does not fit under a ridge at 4.55 m", "between 1 and 4.25 m" },
        { "curtainTop", "curtainTopM", "cannot rise from 2 to 6 m", "under" },
        { "efficiency", "heaters", "efficiency of 1.2 cannot be", "80 % is 0.8" },
        { "setPoints", "heatingPeriods", "60 C by night", "choose Fahrenheit" },
    };

    [Theory, MemberData(nameof(Wrong))]
    public void It_is_said_where_and_what_would_be_right(string what, string field, string message, string remedy)
    {
        var fault = Assert.Single(HouseChecks.Of(House(what), Catalogue.BuiltIn));
        Assert.Equal(field, fault.Field);
        Assert.Contains(message, fault.Message, StringComparison.Ordinal);
        Assert.Contains(remedy, what == "curtainTop" ? fault.Message : fault.Remedy, StringComparison.Ordinal);
        Assert.Null(HouseModels.Of(House(what), Catalogue.BuiltIn, new(), 2026).Model);
    }

    [Fact]
    public void A_sound_house_has_no_fault() => Assert.Empty(HouseChecks.Of(House(string.Empty), Catalogue.BuiltIn));

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
            "length" => house with { LengthM = -20 },
            "wall" => house with { SideWallM = -1 },
            "curtain" => house with { CurtainHeightM = 9 },
            "curtainTop" => house with { CurtainShape = CurtainShape.Sloped, CurtainHeightM = 2, CurtainTopM = 6 },
            "efficiency" => house with { Heaters = [new("power", FuelKind.Propane, 100, 1.2)] },
            "setPoints" => house with { HeatingPeriods = [new(new(11, 1), new(4, 30), 60, 65)] },
            _ => house,
        };
    }
}
