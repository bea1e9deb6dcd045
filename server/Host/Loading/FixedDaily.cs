using System.Globalization;

namespace FarmPortfolio.Host.Loading;

/// <summary>
/// GHCN-Daily .dly lines, a month and element each: ID 1-11, year 12-15, month 16-17, element 18-21, then 31 times value (5), measurement, quality and
/// source flag; tenths of a degree Celsius, -9999 = missing (columns from memory; the sibling USHCN daily layout was read).
/// </summary>
internal static class FixedDaily
{
    private const int FirstValue = 21;
    private const int Width = 8;

    internal static Loaded<WeatherRecord> Read(SourceText text, int headLine, WeatherAnswers answers, FaultList faults)
    {
        var (table, rows, code, number) = (new DailyTable(faults), 0, default(string), 0);
        while (text.ReadLine() is { } line)
        {
            number++;
            if (number < headLine || string.IsNullOrWhiteSpace(line))
            {
                continue;
            }

            rows++;
            if (line.Length < FirstValue + Width || !int.TryParse(line.AsSpan(11, 4), NumberStyles.None, CultureInfo.InvariantCulture, out var year)
                || !int.TryParse(line.AsSpan(15, 2), NumberStyles.None, CultureInfo.InvariantCulture, out var month) || month is < 1 or > 12 || year is < 1800 or > 2200)
            {
                faults.Add("STRAY_TEXT", null, $"\"{WeatherCells.Short(line)}\" is no line of the layout.", "A line is a station, year, month, element and 31 values.", number, 1);
                continue;
            }

            code ??= line[..11];
            if (line[..11] != code)
            {
                faults.Add("TWO_STATIONS", "ID", $"Station {line[..11]} stands in the file of {code}.", "Give one station a file; only the first one's lines are taken.", number, 1);
            }
            else if (line[17..21] is "TMAX" or "TMIN")
            {
                Month(line, number, year, month, table, faults);
            }
        }

        if (text.Refusal is { } refusal)
        {
            faults.Add(refusal);
        }

        return HeadedDaily.Ended(table, rows, faults, "GHCN-Daily .dly lines", answers.Unit, "tenths", new(code));
    }

    private static void Month(string line, int number, int year, int month, DailyTable table, FaultList faults)
    {
        for (var d = 0; d < DateTime.DaysInMonth(year, month); d++)
        {
            var at = FirstValue + Width * d;
            if (line.Length < at + 5)
            {
                return;
            }

            // the second flag is NOAA's own quality check: a letter there means the value failed it
            var failed = line.Length > at + 6 && line[at + 6] != ' ';
            var value = WeatherCells.Number(line.Substring(at, 5).Trim(), line[17..21], number, at + 1, faults);
            if (!double.IsNaN(value))
            {
                table.Add(new(year, month, d + 1), line[17..21] == "TMAX", failed ? double.NaN : value, number, at + 1);
            }
        }
    }
}
