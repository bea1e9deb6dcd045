namespace FarmPortfolio.Published.Heat;

/// <summary>Comparisons that say all they compared.</summary>
internal static class Expect
{
    public static void Near(double expected, double actual, double tolerance, string what) =>
        Assert.True(Math.Abs(actual - expected) <= tolerance, FormattableString.Invariant($"{what}: expected {expected}, reckoned {actual:0.00}, tolerance {tolerance:0.0#}"));

    public static void Between(double low, double high, double actual, double tolerance, string what) =>
        Assert.True(actual >= low - tolerance && actual <= high + tolerance, FormattableString.Invariant($"{what}: expected {low} to {high}, reckoned {actual:0.00}, tolerance {tolerance:0.0#}"));
}
