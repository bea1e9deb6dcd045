namespace FarmPortfolio.Host.Loading;

/// <summary>How the unit of a temperature column is told: by the user, by the head, by the layout, or by the range of its values.</summary>
internal static class TemperatureUnits
{
    private const double HottestC = 57;
    private const int FewestDaysToGainsay = 10;

    /// <summary>The unit a word stands for.</summary>
    /// <param name="word">A head's unit or a cell under it.</param>
    /// <returns>F, C, tenths; null = no unit of temperature.</returns>
    internal static string? Of(string? word)
    {
        var plain = HeadCell.Plain(word ?? string.Empty).Replace("°", string.Empty, StringComparison.Ordinal).Replace("degrees", string.Empty, StringComparison.Ordinal).Replace("deg", string.Empty, StringComparison.Ordinal).Trim();
        return plain switch
        {
            "f" or "fahrenheit" => "F",
            "c" or "celsius" => "C",
            "tenths" or "tenths c" or "tenths of c" or "tenths of  c" or "tenths of celsius" or "0 1 c" or "c/10" or "c x 10" => "tenths",
            _ => null,
        };
    }

    /// <summary>Degrees Celsius.</summary>
    internal static double ToC(double value, string unit) => unit switch { "F" => Engine.Units.Us.C(value), "tenths" => value / 10, _ => value };

    /// <summary>A temperature in both units, as "57 C (135 F)".</summary>
    internal static string Both(double c) => FormattableString.Invariant($"{c:0.#} C ({Engine.Units.Us.F(c):0} F)");

    /// <summary>Plain word for a unit.</summary>
    internal static string Words(string unit) => unit switch { "F" => "Fahrenheit", "tenths" => "tenths of a degree Celsius", _ => "Celsius" };

    /// <summary>Chooses the unit and says how it was told; a word that the values gainsay is a fault.</summary>
    /// <param name="asked">The user's word; null = none.</param>
    /// <param name="told">The head's word; null = none.</param>
    /// <param name="warmest">Highs of the file.</param>
    /// <param name="faults">Where to say it.</param>
    /// <param name="at">Line and column of the head's word.</param>
    /// <returns>Unit and words; null where only the user can say.</returns>
    internal static (string Unit, string Words)? Choose(string? asked, string? told, IReadOnlyList<(DateOnly Day, double High)> warmest, FaultList faults, (int? Line, int? Column) at)
    {
        // the third highest, so that one slip does not speak for the file
        var high = warmest.Select(w => w.High).OrderDescending().Take(3).LastOrDefault();
        var summers = warmest.Count(w => w.Day.Month is 6 or 7 or 8);
        // no place that heats houses stays under 48 F through a summer, nor passes 48 C
        string? range = high > 150 ? "tenths" : high > 48 ? "F" : summers >= 30 ? "C" : null;
        var word = Of(asked) ?? Of(told);
        if (word is null)
        {
            if (range is null)
            {
                faults.Add("UNIT_UNKNOWN", "unit", "The file has no summer and its head names no unit, so Fahrenheit and Celsius cannot be told apart.", "Choose the unit, or write it in the head: TMAX (F).", at.Line, at.Column);
                return null;
            }

            return (range, $"{Words(range)}, by the range of the highs");
        }

        if (range is not null && range != word && warmest.Count >= FewestDaysToGainsay)
        {
            var (line, column) = asked is null ? at : (null, null);
            faults.Add("WRONG_UNIT", "unit", $"{(asked is null ? "The head says" : "You said")} {Words(word)}, but the highest value is {high:0.#}{(summers >= 30 ? $" with {summers} days of summer in the file" : string.Empty)}: these are degrees {(range == "tenths" ? "in tenths" : Words(range))}.",
                $"Choose {Words(range)} as the unit.", line, column);
            if (asked is null)
            {
                return null;
            }
        }

        return (word, $"{Words(word)}, {(Of(asked) is null ? "by the head" : "as you said")}");
    }

    /// <summary>Whether a value can be a day's temperature on Earth.</summary>
    internal static bool Believable(double valueC) => valueC is >= -60 and <= HottestC;

    /// <summary>The other unit, when a month fits the same months of other years in it and not in its own.</summary>
    /// <param name="mean">Mean of the month in the file's unit.</param>
    /// <param name="usual">Middle of the same calendar month over the years, in the file's unit.</param>
    /// <param name="unit">The file's unit.</param>
    /// <returns>F or C; null = the month is in the file's unit.</returns>
    internal static string? Strayed(double mean, double usual, string unit)
    {
        var (far, other, inUnit) = unit switch
        {
            "F" => (11.0, "C", mean * 1.8 + 32),
            "C" => (6.0, "F", (mean - 32) / 1.8),
            _ => (double.PositiveInfinity, string.Empty, mean),
        };
        return Math.Abs(mean - usual) > far && Math.Abs(inUnit - usual) < far / 2 ? other : null;
    }
}
