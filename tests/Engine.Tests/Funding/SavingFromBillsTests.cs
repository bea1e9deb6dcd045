using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Funding;
using FarmPortfolio.Engine.Tests.HeatDemand.Calibration;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.Tests.Funding;

/// <summary>A known saving is found again in made bills, at the weather of the season after.</summary>
public class SavingFromBillsTests
{
    private const double Loss = 1.2;
    private const double BasePerDay = 20;
    private static readonly DateOnly Installed = new(2013, 7, 10);
    private static readonly double MeanSeason = MadeBills.Winters.Keys.Average(s => MadeBills.Modelled(SeasonCalendar.FirstDay(s), SeasonCalendar.FirstDay(s + 1).AddDays(-1)));

    [Theory]
    [InlineData(0.20, 0.20, 1.0)] // all that was promised
    [InlineData(0.10, 0.20, 0.5)] // half of it
    [InlineData(0.00, 0.20, 0.0)] // nothing
    public void The_share_delivered_is_found_again(double saved, double promised, double expected)
    {
        var (verified, fault) = SavingFromBills.Of(MadeBills.Meter, Bills(saved), MadeBills.Behind, MadeBills.Winters, Installed, promised * Loss * MeanSeason);
        Assert.Null(fault);
        Assert.Equal(expected, verified!.Share, 0.03);
        Assert.InRange(expected, verified.Low, verified.High);
        Assert.Equal((VerifiedBy.Fuel, 2013), (verified.By, verified.Season));

        // the spread is at least that of the fit held before the bills: 5 % of the fuel with and without, 90 % two-sided, over the promise
        var spread = 1.645 * 0.05 * Math.Sqrt(1 + (1 - saved) * (1 - saved)) / promised;
        Assert.InRange((verified.High - verified.Low) / 2, 0.98 * spread, 1.3 * spread);
    }

    [Fact]
    public void Bills_that_do_not_reach_far_enough_are_no_verification()
    {
        var whole = Bills(0.2);
        var before = SavingFromBills.Of(MadeBills.Meter, whole with { Entries = [.. whole.Entries.Where(e => e.FromOn > Installed)] }, MadeBills.Behind, MadeBills.Winters, Installed, 1000);
        Assert.Equal("BEFORE_NOT_KNOWN", before.Fault!.Code);
        var after = SavingFromBills.Of(MadeBills.Meter, whole with { Entries = [.. whole.Entries.Where(e => e.ToOn < new DateOnly(2013, 12, 1))] }, MadeBills.Behind, MadeBills.Winters, Installed, 1000);
        Assert.Equal("AFTER_TOO_SHORT", after.Fault!.Code);
    }

    private static FuelRecordFacts Bills(double saved)
    {
        var (before, after) = (MadeBills.Bills(35, Loss, BasePerDay, _ => 0), MadeBills.Bills(35, Loss * (1 - saved), BasePerDay, _ => 0));
        return before with { Entries = [.. before.Entries.Zip(after.Entries, (b, a) => b.ToOn < Installed ? b : a).Where(e => e.ToOn < Installed || e.FromOn > Installed)] };
    }
}
