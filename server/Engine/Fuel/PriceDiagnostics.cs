using static System.Math;

namespace FarmPortfolio.Engine.Fuel;

/// <summary>What a price record can say and what it cannot.</summary>
public sealed record PriceDiagnostics
{
    /// <summary>Months under which nothing but the default says how prices move at length.</summary>
    public const int FiveYears = 60;

    /// <summary>First month used.</summary>
    public required DateOnly FirstMonthOn { get; init; }

    /// <summary>Last month used.</summary>
    public required DateOnly LastMonthOn { get; init; }

    /// <summary>Months used.</summary>
    public required int Months { get; init; }

    /// <summary>Months filled between neighbours.</summary>
    public required int Filled { get; init; }

    /// <summary>Months left out, on the far side of a long gap.</summary>
    public required int Dropped { get; init; }

    /// <summary>The model that futures would take.</summary>
    public required PriceModel Model { get; init; }

    /// <summary>Volatility that the class has without a record, a year^-1/2.</summary>
    public required double ClassVolatility { get; init; }

    /// <summary>Correlation of a month's change with the one before; null = too short a record.</summary>
    public double? Lag { get; init; }

    /// <summary>Excess kurtosis of monthly changes; 0 = a bell curve.</summary>
    public double? ExcessKurtosis { get; init; }

    /// <summary>Changes of a month that stand out, the largest first, in logs.</summary>
    public IReadOnlyList<(DateOnly MonthOn, double Change)> Jumps { get; init; } = [];

    /// <summary>Spread of three-year changes over what three-month changes alone would give, both less the growth; null under five years.</summary>
    public double? LongSpread { get; init; }

    /// <summary>The same in the model.</summary>
    public double ModelLongSpread { get; init; }

    /// <summary>Whether a price that returns nowhere is rejected; null under five years.</summary>
    public UnitRoot? UnitRoot { get; init; }

    /// <summary>One price that returns to a level; null under five years.</summary>
    public OneFactorFit? Return { get; init; }

    /// <summary>Both factors fitted freely; null under five years.</summary>
    public PriceFreeFit? FreeFit { get; init; }

    /// <summary>The record's own back-test; empty under eleven years.</summary>
    public IReadOnlyList<BackTestCount> BackTest { get; init; } = [];

    /// <summary>Looks at a record.</summary>
    /// <param name="record">Record.</param>
    /// <param name="priceClass">Class.</param>
    /// <param name="own">The user's own parameters; null = none.</param>
    /// <returns>What it says.</returns>
    public static PriceDiagnostics Of(PriceRecord record, PriceClass priceClass, FuelPriceAssumption? own = null)
    {
        var model = PriceFit.Of(record, priceClass, own);
        var x = PriceFit.Plain(record, model.Shape);
        var plain = new PriceDiagnostics
        {
            FirstMonthOn = record.FirstMonthOn,
            LastMonthOn = record.LastMonthOn,
            Months = x.Length,
            Filled = record.Filled,
            Dropped = record.Dropped,
            Model = model,
            ClassVolatility = PriceClassDefaults.Of(priceClass).PriorVolatility,
            ModelLongSpread = Ratio(model),
        };
        if (x.Length < PriceRecord.FewestMonths)
        {
            return plain;
        }

        var changes = Changes.Over(x, 1);
        plain = plain with { Lag = Changes.Lag(changes), ExcessKurtosis = Changes.ExcessKurtosis(changes), Jumps = [.. Changes.Jumps(changes).Select(j => (record.FirstMonthOn.AddMonths(j.Index + 1), j.Change))] };
        return x.Length < FiveYears ? plain : plain with
        {
            LongSpread = Spread(x, model.Growth),
            UnitRoot = UnitRoot.Of(x),
            Return = OneFactorFit.Of(x),
            FreeFit = PriceFreeFit.Of(record, priceClass),
            BackTest = PriceBackTest.Of(record, priceClass),
        };
    }

    /// <summary>Mean square of 36-month changes over twelve times that of 3-month changes, both less the growth.</summary>
    internal static double Spread(IReadOnlyList<double> logs, double growth) =>
        Changes.Over(logs, 36).Average(c => Pow(c - 3 * growth, 2)) / (12 * Changes.Over(logs, 3).Average(c => Pow(c - growth / 4, 2)));

    private static double Ratio(PriceModel m)
    {
        double Change(double years) => m.LongVolatility * m.LongVolatility * (m.LongReversion > 0 ? (1 - Exp(-2 * m.LongReversion * years)) / (2 * m.LongReversion) : years)
            + (m.ShortReversion > 0 ? m.ShortVolatility * m.ShortVolatility * (1 - Exp(-m.ShortReversion * years)) / m.ShortReversion : 0);
        return Change(3) / (12 * Change(0.25));
    }
}
