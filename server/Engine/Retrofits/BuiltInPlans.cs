using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Retrofits;

/// <summary>Crop heating plans: when a crop wants which night and day set point.</summary>
internal static class BuiltInPlans
{
    internal static IEnumerable<CatalogueFacts> All =>
    [
        Plan("bedding-early", "Spring bedding, early", Period(2, 1, 3, 14, 65, 68), Period(3, 15, 4, 30, 60, 65), Period(5, 1, 5, 31, 55, 60)),
        Plan("bedding-late", "Spring bedding, late start", Period(3, 15, 4, 30, 60, 65), Period(5, 1, 5, 31, 55, 60)),
        Plan("tomato-early", "Tomato in the ground, early", Period(3, 1, 3, 31, 62, 68), Period(4, 1, 6, 15, 62, 70), Period(9, 15, 10, 31, 60, 65)),
        Plan("greens", "Winter greens", Period(10, 15, 3, 31, 33, 40)),
        Plan("greens-warm", "Winter greens, kept growing", Period(10, 15, 3, 31, 40, 45)),
        Plan("lettuce", "Lettuce and cool pot crops, all year", Period(7, 1, 6, 30, 50, 60)),
        Plan("poinsettia", "Poinsettia", Period(8, 15, 10, 31, 65, 70), Period(11, 1, 12, 15, 62, 68)),
        Plan("overwinter", "Overwintering perennials", Period(11, 1, 3, 15, 34, 36)),
        Plan("winter-long", "November to April, 60 F by night", Period(11, 1, 4, 30, 60, 65)),
        Plan("spring", "February to May, 60 F by night", Period(2, 1, 5, 31, 60, 65)),
    ];

    private static HeatingPeriod Period(int fromMonth, int fromDay, int toMonth, int toDay, double nightF, double dayF) =>
        new(new(fromMonth, fromDay), new(toMonth, toDay), Us.C(nightF), Us.C(dayF));

    private static CatalogueFacts Plan(string code, string title, params HeatingPeriod[] periods) => new()
    {
        Kind = CatalogueKind.HeatingPlan,
        Code = code,
        Title = title,
        Periods = periods,
    };
}
