namespace FarmPortfolio.Engine.Trials;

/// <summary>One line of a trial notebook.</summary>
/// <param name="House">Index of the house in the trial.</param>
/// <param name="At">When it was read, local standard time.</param>
/// <param name="Value">Counter or quantity read, in the unit of the house; NaN = none, the interval runs on.</param>
/// <param name="InsideC">Mean inside temperature since the last reading, C; NaN = not told.</param>
/// <param name="OutsideC">Mean outside temperature since the last reading, C; NaN = not told.</param>
/// <param name="SetPointC">Night set point, C; NaN = not told.</param>
/// <param name="State">State of the retrofit since the last reading.</param>
/// <param name="NewSegment">Whether the counter was changed or set anew at this reading: what it reads starts a segment.</param>
public sealed record TrialReading(int House, DateTime At, double Value, double InsideC, double OutsideC, double SetPointC, RetrofitState State, bool NewSegment = false);

/// <summary>Lays readings out as numbers for a blob, eight a reading.</summary>
public static class TrialReadings
{
    private const int Width = 8;
    private static readonly DateTime Epoch = new(2000, 1, 1, 0, 0, 0, DateTimeKind.Unspecified);

    /// <summary>Readings as numbers: house, minutes since 2000, value, inside, outside, set point, state, new segment.</summary>
    /// <param name="readings">Readings.</param>
    /// <returns>Numbers.</returns>
    public static double[] Pack(IReadOnlyList<TrialReading> readings) =>
        [.. readings.SelectMany(r => new[] { r.House, Math.Round((r.At - Epoch).TotalMinutes), r.Value, r.InsideC, r.OutsideC, r.SetPointC, (int)r.State, r.NewSegment ? 1 : 0 })];

    /// <summary>Numbers as readings.</summary>
    /// <param name="numbers">Numbers that <see cref="Pack"/> made.</param>
    /// <returns>Readings.</returns>
    /// <exception cref="ArgumentException">Not eight numbers a reading.</exception>
    public static IReadOnlyList<TrialReading> Unpack(double[] numbers)
    {
        if (numbers.Length % Width != 0)
        {
            throw new ArgumentException($"readings take {Width} numbers each, and {numbers.Length} is no multiple of it", nameof(numbers));
        }

        return [.. Enumerable.Range(0, numbers.Length / Width).Select(i => numbers.AsSpan(Width * i, Width).ToArray()).Select(n =>
            new TrialReading((int)n[0], Epoch.AddMinutes(n[1]), n[2], n[3], n[4], n[5], (RetrofitState)(int)n[6], n[7] > 0))];
    }
}
