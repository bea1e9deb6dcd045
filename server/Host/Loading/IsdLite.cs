using System.Globalization;

namespace FarmPortfolio.Host.Loading;

/// <summary>
/// ISD-Lite lines: year, month, day, hour in UTC, air temperature in tenths of a degree Celsius, dew point, pressure, wind direction, wind speed, sky,
/// precipitation; -9999 = missing (NOAA, ISD-Lite format document). Read by blanks: the printed columns contradict their own lengths.
/// </summary>
internal static class IsdLite
{
    internal static Loaded<WeatherRecord> Read(SourceText text, int headLine, WeatherAnswers answers, FaultList faults)
    {
        if (answers.UtcOffsetHours is not (>= -12 and <= 14))
        {
            faults.Add("UTC_OFFSET_UNKNOWN", "utcOffsetHours", "ISD-Lite tells the hours in UTC, and the place's own time is not known.", "Say how far local standard time is from UTC, -5 in New York; a fifteenth of the longitude is near enough.");
        }

        var offset = answers.UtcOffsetHours ?? 0;
        var (table, rows, number) = (new HourTable(faults), 0, 0);
        while (text.ReadLine() is { } raw)
        {
            number++;
            var cells = raw.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
            if (number < headLine || cells.Length == 0)
            {
                continue;
            }

            rows++;
            if (cells.Length < 5 || !DateTime.TryParseExact($"{cells[0]}-{cells[1]}-{cells[2]} {cells[3]}", "yyyy-MM-dd HH", CultureInfo.InvariantCulture, DateTimeStyles.None, out var at) || at.Year is < 1800 or > 2200)
            {
                faults.Add("STRAY_TEXT", null, $"\"{WeatherCells.Short(raw.Trim())}\" is no line of the layout.", "A line is year, month, day, hour, temperature in tenths and more.", number, 1);
                continue;
            }

            table.Add(at.AddHours(offset), WeatherCells.Number(cells[4], "temperature", number, 5, faults), number, 1);
        }

        if (text.Refusal is { } refusal)
        {
            faults.Add(refusal);
        }

        return HourlyTable.Ended(table, rows, faults, "ISD-Lite lines", "tenths", "tenths of a degree Celsius, by the layout", new());
    }
}
