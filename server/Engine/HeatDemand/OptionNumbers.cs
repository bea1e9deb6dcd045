using FarmPortfolio.Engine.Retrofits;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>A retrofit's numbers on one house: the option's own figure, else the catalogue's. Own physics are named "code.name".</summary>
internal sealed class OptionNumbers(Catalogue catalogue, OptionOverrides? overrides)
{
    /// <summary>A number, or what stands for it.</summary>
    /// <param name="code">Retrofit.</param>
    /// <param name="name">Name of the number.</param>
    /// <param name="otherwise">What stands where there is none.</param>
    /// <returns>The number, SI.</returns>
    public double Of(string code, string name, double otherwise = 0) =>
        overrides is not null && overrides.Physics.TryGetValue(code + "." + name, out var own) ? own : catalogue.Value(CatalogueKind.Retrofit, code, name, otherwise);

    /// <summary>The rule of operation of a movable retrofit.</summary>
    /// <param name="code">Retrofit.</param>
    /// <returns>The rule.</returns>
    public OperationRule Rule(string code)
    {
        var kind = (ClosingKind)(int)Of(code, "closing");
        var clock = kind == ClosingKind.Light ? null : new ClockHours(ByMonth(code, "closeAtH", 17), ByMonth(code, "openAtH", 7));
        return new(
            Of(code, "onBelowC", double.PositiveInfinity), Of(code, "keepBelowC", double.NegativeInfinity),
            Of(code, "keepSunBelowWPerM2", double.PositiveInfinity), Of(code, "sunThrough", 1))
        {
            Closing = new(kind, Of(code, "closeBelowWPerM2", catalogue.Default("closeBelowWPerM2")), Of(code, "delayHours"), clock),
        };
    }

    /// <summary>Hours by month, July first; "closeAtH.1" sets January's.</summary>
    private double[] ByMonth(string code, string name, double otherwise)
    {
        var all = Of(code, name, otherwise);
        return [.. Enumerable.Range(0, 12).Select(m => Of(code, FormattableString.Invariant($"{name}.{Weather.SeasonCalendar.CalendarMonth(m)}"), all))];
    }
}
