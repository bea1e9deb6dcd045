using System.Text.RegularExpressions;

namespace FarmPortfolio.Host.Loading;

/// <summary>
/// Reads a weather record in any of its layouts, told apart by the first 64 kB: NOAA's daily CSV with a head, GHCN-Daily by-station rows and .dly
/// lines, ISD-Lite lines, and an hourly CSV with a head.
/// </summary>
public static partial class WeatherFile
{
    /// <summary>Reads a record.</summary>
    /// <param name="text">Text.</param>
    /// <param name="answers">What the file does not say.</param>
    /// <returns>The record, null when there is none, and its faults.</returns>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static Loaded<WeatherRecord> Read(SourceText text, WeatherAnswers? answers = null)
    {
        var (faults, given) = (new FaultList(text.File), answers ?? new());
        if (given.Unit is { } unit && TemperatureUnits.Of(unit) is null)
        {
            faults.Add("UNKNOWN_UNIT", "unit", $"\"{unit}\" is no unit of temperature.", "Choose F, C or tenths.");
            return new(null, 0, faults.All);
        }

        var (layout, head) = Layout(text);
        if (layout is null)
        {
            faults.Add(text.Refusal ?? (IsNormals(text)
                ? new("NORMALS", null, "These are monthly normals, not days or hours.", "Bring them in as monthly normals of a station; daily or hourly records tell more.", text.File, 1, 1)
                : new(
                "NO_HEAD", null, "The first 64 kB hold no head with DATE, TMAX and TMIN, none with a time and a temperature, and no row of a weather station.",
                "Give NOAA's daily CSV, its by-station or .dly layout, ISD-Lite, or an hourly CSV with a head: date, temperature (C).", text.File, 1, 1)));
            return new(null, 0, faults.All);
        }

        text.HeadFound();
        return layout(text, head, given, faults);
    }

    /// <summary>Reads a record from a text at hand.</summary>
    /// <param name="text">Text.</param>
    /// <param name="file">Name of the file.</param>
    /// <param name="answers">What the file does not say.</param>
    /// <returns>The record and its faults.</returns>
    public static Loaded<WeatherRecord> Read(TextReader text, string file, WeatherAnswers? answers = null)
    {
        using var source = new SourceText(text, file);
        return Read(source, answers);
    }

    private static (Func<SourceText, int, WeatherAnswers, FaultList, Loaded<WeatherRecord>>? Read, int HeadLine) Layout(SourceText text)
    {
        var number = 0;
        foreach (var range in text.Head.Split('\n'))
        {
            number++;
            var line = text.Head[range].Trim("\uFEFF\r ").ToString();
            if (DlyLine().IsMatch(line))
            {
                return (FixedDaily.Read, number);
            }

            if (IsdLiteLine().IsMatch(line))
            {
                return (IsdLite.Read, number);
            }

            if (ByStationLine().IsMatch(line))
            {
                return (ByStationDaily.Read, number);
            }

            var cells = line.Split(line.Contains('\t', StringComparison.Ordinal) ? '\t' : line.Contains(';', StringComparison.Ordinal) ? ';' : ',').Select(c => c.Trim(' ', '"')).ToArray();
            if (HeadedDaily.Columns(cells) is not null)
            {
                return (HeadedDaily.Read, number);
            }

            if (HourlyTable.Columns(cells) is not null)
            {
                return (HourlyTable.Read, number);
            }
        }

        return (null, 0);
    }

    private static bool IsNormals(SourceText text) => text.Head.ToString().Split('\n').Any(l => MonthlyNormals.IsHead([.. l.Trim('\uFEFF', '\r', ' ').Split(',', ';', '\t').Select(c => c.Trim(' ', '"'))]));

    [GeneratedRegex(@"^[A-Z]{2}[A-Z0-9_-]{9}\d{6}[A-Z]{4}(?:[ \d-]{5}.{3})")]
    private static partial Regex DlyLine();

    [GeneratedRegex(@"^\d{4} +\d{2} +\d{2} +\d{2} +-?\d+( +-?\d+){3,}$")]
    private static partial Regex IsdLiteLine();

    [GeneratedRegex("""^"?[A-Z]{2}[A-Z0-9_-]{9}"?[,;\t]"?\d{8}"?[,;\t]"?[A-Z]{4}"?[,;\t]""")]
    private static partial Regex ByStationLine();
}
