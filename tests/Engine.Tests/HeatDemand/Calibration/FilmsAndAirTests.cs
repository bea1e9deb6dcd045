using FarmPortfolio.Engine.HeatDemand.Calibration;
using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Engine.Tests.HeatDemand.Calibration;

/// <summary>Films and leaks apart: told where the bills differ in how they lose heat, kept as held before where they do not, with intervals that hold the truth at their stated rate.</summary>
public class FilmsAndAirTests
{
    private const int Months = 24;
    private static readonly int[] Days = [.. Enumerable.Repeat(30, Months)];
    private static readonly double[] Modelled = [.. Enumerable.Range(0, Months).Select(i => 8000 + 6000 * Math.Cos(2 * Math.PI * i / 12))];

    [Fact]
    public void Bills_in_which_leaks_weigh_differently_tell_both()
    {
        // one winter on a sheltered and one on a windy site, say: leaks take 10 or 50 per cent of the heat
        var air = Modelled.Select((m, i) => m * (i < 12 ? 0.1 : 0.5)).ToArray();
        var film = Modelled.Select((m, i) => m * 0.95 - air[i]).ToArray();
        var use = Modelled.Select((m, i) => m - film[i] - air[i] + 1.2 * film[i] + 0.7 * air[i] + 40 * Days[i]).ToArray();
        var told = FilmsAndAir.Of(use, Modelled, film, air, Days, [.. use.Select(_ => 50.0 * 50)], 0, true, new());
        Near(1.2, told.FilmFactor, 0.02, "films");
        Near(0.7, told.AirFactor, 0.03, "leaks");
        Assert.True(told.BillsTell && told.AirSdLn < 0.1, $"spread of ln N {told.AirSdLn}");
    }

    [Fact]
    public void A_bill_of_one_house_cannot_tell_and_says_so()
    {
        var fit = Calibrations.Of(MadeBills.Meter, MadeBills.Bills(24, 1.3, 60, MadeBills.Noise(5), 20), MadeBills.Behind, MadeBills.Winters);
        var apart = fit.Apart!;
        Assert.False(apart.BillsTell, $"spread of ln N {apart.AirSdLn}");
        Assert.InRange(apart.AirSdLn, 0.30, 0.35);
        Assert.True(apart.FilmFactor is > 1.15 and < 1.4 && apart.AirFactor is > 1.05 and < 1.6, $"films {apart.FilmFactor}, leaks {apart.AirFactor}");
        Assert.True(apart.FilmSdLn < 0.12, $"with the leaks given the films follow: {apart.FilmSdLn}");
        Near(apart.AirSdLn, Calibrations.House(fit, "g", 1).AirSdLn, 1e-12, "one house");
        Assert.True(Calibrations.House(fit, "g", 4).AirSdLn > apart.AirSdLn, "bills of four houses tell less of each");
    }

    [Fact]
    public void Bills_not_believed_leave_the_air_changes_as_held_before()
    {
        var fit = Calibrations.Of(MadeBills.Meter, MadeBills.Bills(24, 2.1, 0, _ => 0), MadeBills.Behind, MadeBills.Winters);
        Assert.Null(fit.Apart);
        var loss = Calibrations.House(fit, "g", 1, new(AirLn: 0.2));
        Assert.Equal((1, 0.2), (loss.AirFactor, loss.AirSdLn));
    }

    [Fact]
    public void Ninety_per_cent_intervals_hold_films_and_leaks_at_their_rate()
    {
        // houses drawn from what is held before, bills made by the hourly balance of that very house
        const int Houses = 200;
        var spreads = new FitSpreads();
        var (airIn, filmIn) = (0, 0);
        for (var r = 0; r < Houses; r++)
        {
            var (u, n) = (spreads.FilmLn * Draw(1, r), spreads.AirLn * Draw(2, r));
            var house = MadeBills.House;
            var truth = house with { AirChangesPerHour = house.AirChangesPerHour * Math.Exp(n), RoofU = house.RoofU * Math.Exp(u), SideU = house.SideU * Math.Exp(u), EndU = house.EndU * Math.Exp(u) };
            var fit = Calibrations.Of(MadeBills.Meter, MadeBills.BillsOf(truth, Months, 40, MadeBills.Noise(r, 77), 40), MadeBills.Behind, MadeBills.Winters, spreads);
            var apart = fit.Apart!;
            airIn += Math.Abs(n - Math.Log(apart.AirFactor)) <= 1.645 * apart.AirSdLn ? 1 : 0;
            filmIn += Math.Abs(u - Math.Log(apart.FilmFactor)) <= 1.645 * apart.FilmSdLn ? 1 : 0;
        }

        var said = $"air changes held in {airIn}, films in {filmIn} of {Houses}";
        TestContext.Current.SendDiagnosticMessage(said);
        Assert.True(Math.Abs(airIn / 2.0 - 90) <= 4 && Math.Abs(filmIn / 2.0 - 90) <= 4, said);
    }

    private static double Draw(long key, int replicate) => Noise.Normal(31, NoisePurpose.AirOwn, key, replicate, 0);

    private static void Near(double expected, double actual, double tolerance, string what) => Assert.True(Math.Abs(expected - actual) <= tolerance, $"{what}: {actual}, not {expected} within {tolerance}");
}
