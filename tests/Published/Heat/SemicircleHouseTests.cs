namespace FarmPortfolio.Published.Heat;

/// <summary>
/// The semicircle house on the Central Park record and on the same record 12 F colder at 44.5 N. Expected: an independent script with the same inputs.
/// Its savings lie in the published ranges: foam 27 to 43 %, night curtain 25 to 31 % (SARE LNE10-299 final report), curtain 20 to 40 % (NC State 2187),
/// 70 to 80 % of the heat by night (eXtension farm energy, thermal curtains). Tolerance: heat 8 %, 2.5 % on days shaped as in the script; savings 1 point where the script's are printed in whole points,
/// more where a row says why.
/// </summary>
public class SemicircleHouseTests
{
    private const string All = "winter-long";
    private const string Spring = "spring";

    /// <summary>Heat as it stands in million Btu, share wanted in the dark, foam and curtain saving.</summary>
    public static TheoryData<string, string, double, double, double, double> Table => new()
    {
        { "north", Spring, 230, 72, 36, 25 }, { "north", All, 499, 72, 36, 25 }, { "nyc", Spring, 122, 78, 39, 27 }, { "nyc", All, 291, 77, 39, 27 },
    };

    /// <summary>
    /// Single retrofits: north November to April, north February to May, New York November to April; tolerance in points. The blanket leaves a gap that the script does not have (with it closed: <see cref="CurtainTests"/>);
    /// the edge is printed to a tenth.
    /// </summary>
    public static TheoryData<string, double, double, double, double> Savings => new()
    {
        { "foam", 36, 36, 39, 1 }, { "curtain", 25, 25, 27, 1 }, { "blanket", 18, 18, 19, 1.7 }, { "irfilm", 15, 16, 15, 0.8 }, { "kneewall", 9, 10, 10, 0.8 }, { "endwalls", 9, 9, 9, 0.5 },
        { "perimeter", 2.7, 2.8, 2.7, 0.15 },
    };

    /// <summary>Combinations, north November to April; sealing from 1.0 to 0.6 air changes.</summary>
    public static TheoryData<string, double> Combinations => new()
    {
        { "foam+seal", 43 }, { "foam+endwalls+perimeter", 48 }, { "foam+irfilm", 45 }, { "foam+curtain", 44 }, { "foam+seal+endwalls+perimeter", 54 },
        { "curtain+seal", 30 }, { "curtain+irfilm", 36 }, { "curtain+irfilm+seal+kneewall+endwalls+perimeter", 55 },
    };

    [Theory, MemberData(nameof(Table))]
    public void First_table(string place, string plan, double heatMmbtu, double darkPct, double foamPct, double curtainPct)
    {
        var house = new SemicircleHouse { Place = place, Plan = plan };
        var seasons = house.Seasons();
        Expect.Near(heatMmbtu, house.HeatMmbtu(), 0.08 * heatMmbtu, $"{place} {plan}, heat, MMBtu");
        Expect.Near(heatMmbtu, (house with { Cosine = true }).HeatMmbtu(), 0.025 * heatMmbtu, $"{place} {plan}, heat on the script's shape of the day, MMBtu");
        Expect.Near(darkPct, 100 * seasons.Sum(s => s.DarkDemandKwh) / seasons.Sum(s => s.TotalKwh), 1.7, $"{place} {plan}, share in the dark");
        Expect.Near(foamPct, house.With("foam").SavingPct(), 1, $"{place} {plan}, foam");
        Expect.Near(curtainPct, house.With("curtain").SavingPct(), 1, $"{place} {plan}, curtain");
    }

    [Theory, MemberData(nameof(Savings))]
    public void Saving_of_a_retrofit(string code, double northWinter, double northSpring, double nycWinter, double tolerance)
    {
        Expect.Near(northWinter, new SemicircleHouse { Place = "north", Plan = All }.With(code).SavingPct(), tolerance, code + ", north, November to April");
        Expect.Near(northSpring, new SemicircleHouse { Place = "north", Plan = Spring }.With(code).SavingPct(), tolerance, code + ", north, February to May");
        Expect.Near(nycWinter, new SemicircleHouse { Place = "nyc", Plan = All }.With(code).SavingPct(), tolerance, code + ", New York, November to April");
    }

    [Theory, MemberData(nameof(Combinations))]
    public void Saving_of_a_combination(string codes, double expected) =>
        Expect.Near(expected, new SemicircleHouse().With(codes, ("seal.airFactor", 0.6)).SavingPct(), 0.8, codes);

    [Theory]
    [InlineData("foam", 50)]
    [InlineData("curtain", 35)]
    public void Saving_of_the_hours_in_the_dark(string code, double expected)
    {
        // the season's figure is this x the share wanted in the dark; an hour half dark counts as lit, so a point off
        var (standing, with) = (new SemicircleHouse().Seasons(), new SemicircleHouse().With(code).Seasons());
        var dark = 100 * (1 - with.Sum(s => s.DarkDemandKwh) / standing.Sum(s => s.DarkDemandKwh));
        Expect.Near(expected, dark, 1.5, code + ", in the dark alone");
        Expect.Near(new SemicircleHouse().With(code).SavingPct(), dark * standing.Sum(s => s.DarkDemandKwh) / standing.Sum(s => s.TotalKwh), 1.2, code + ", season from its dark share");
    }
}
