using System.Globalization;

namespace FarmPortfolio.Host.Loading;

/// <summary>An hourly CSV with a head: a time (or a date and an hour) and a temperature, in local standard time unless the time itself tells its zone.</summary>
internal static class HourlyTable
{
    private static readonly string[] Temperatures = ["temperature", "temp", "tmp", "air temperature", "air temp", "outside temperature", "outside temp", "dry bulb", "dry bulb temperature", "drybulb", "hourlydrybulbtemperature"];
    private static readonly string[] Times = ["date", "time", "datetime", "date time", "timestamp", "day", "local time", "valid"];
    private static readonly string[] Hours = ["hour", "time", "hr"];
    private static readonly string[] Formats =
    [
        "yyyy-MM-dd'T'HH:mm:ss", "yyyy-MM-dd'T'HH:mm", "yyyy-MM-dd HH:mm:ss", "yyyy-MM-dd HH:mm", "yyyy-MM-dd H:mm", "yyyy-MM-dd H", "M/d/yyyy H:mm", "M/d/yyyy H:mm:ss", "M/d/yyyy H", "yyyyMMdd HHmm", "yyyyMMddHHmm", "yyyyMMdd H",
    ];

    /// <summary>Where the columns stand; null when one is missing.</summary>
    internal static Found? Columns(string[] cells)
    {
        var heads = cells.Select(c => HeadCell.Of(c, w => TemperatureUnits.Of(w) is not null)).ToArray();
        int Find(string[] names, int not = -1) => Array.FindIndex(heads, h => names.Contains(h.Name, StringComparer.Ordinal) && Array.IndexOf(heads, h) != not);
        var time = Find(Times);
        var (hour, temperature) = (Find(Hours, time), Find(Temperatures));
        return time < 0 || temperature < 0 ? null : new(time, hour, temperature, heads[temperature].Unit);
    }

    internal static Loaded<WeatherRecord> Read(SourceText text, int headLine, WeatherAnswers answers, FaultList faults)
    {
        var (table, rows, told, toldAt) = (new HourTable(faults), 0, default(string), default((int?, int?)));
        Found? at = null;
        var (zoneAsked, dates) = (false, new SlashDates());
        foreach (var (line, cells) in TableRows.Of(text, faults))
        {
            if (at is null)
            {
                at = line >= headLine ? Columns(cells) : null;
                (told, toldAt) = (at?.Unit, (line, at?.Temperature + 1));
                if (at is not null)
                {
                    SheetHead.Doubled([.. cells.Select(c => HeadCell.Of(c, w => TemperatureUnits.Of(w) is not null).Name)], [at.Time, at.Temperature], line, faults);
                }

                continue;
            }

            if (rows == 0 && TemperatureUnits.Of(cells.ElementAtOrDefault(at.Temperature)) is { } unit)
            {
                (told, toldAt) = (unit, (line, at.Temperature + 1));
                continue;
            }

            rows++;
            var cell = at.Hour < 0 ? cells.ElementAtOrDefault(at.Time) : $"{cells.ElementAtOrDefault(at.Time)} {cells.ElementAtOrDefault(at.Hour)}";
            dates.See(cell, line, at.Time + 1);
            if (Moment(cell, answers.UtcOffsetHours) is not { } moment)
            {
                faults.Add("NOT_A_TIME", "time", $"\"{WeatherCells.Short(cell)}\" is no time.", "Write times as 2024-01-31 14:00.", line, at.Time + 1);
                continue;
            }

            if (moment.Zoned && answers.UtcOffsetHours is null && !zoneAsked)
            {
                faults.Add("UTC_OFFSET_UNKNOWN", "utcOffsetHours", "The times tell their zone, and the place's own standard time is not known.", "Say how far local standard time is from UTC, -5 in New York.", line, at.Time + 1);
                zoneAsked = true;
            }

            table.Add(moment.At, WeatherCells.Number(cells.ElementAtOrDefault(at.Temperature), "temperature", line, at.Temperature + 1, faults), line, at.Time + 1);
        }

        if (dates.InDoubt(faults))
        {
            return new(null, rows, faults.All);
        }

        if (table.Count == 0)
        {
            return Ended(table, rows, faults, string.Empty, "C", string.Empty, new());
        }

        return TemperatureUnits.Choose(answers.Unit, told, [.. table.Highs()], faults, toldAt) is { } sure
            ? Ended(table, rows, faults, "an hourly CSV with a head", sure.Unit, sure.Words, new())
            : new(null, rows, faults.All);
    }

    /// <summary>The record, or the fault that it is none.</summary>
    internal static Loaded<WeatherRecord> Ended(HourTable table, int rows, FaultList faults, string layout, string unit, string words, StationPlace place)
    {
        if (table.Count == 0)
        {
            faults.Add("EMPTY", null, "The file holds no hour with a temperature.", "Give at least one season of hours.");
            return new(null, rows, faults.All);
        }

        var record = table.Finish(layout, unit, words, place);
        if (table.Count < 6.0 * (record.LastOn.DayNumber - record.FirstOn.DayNumber + 1))
        {
            faults.Add("NOT_HOURLY", "time", string.Create(CultureInfo.InvariantCulture, $"Readings a day: {table.Count / (double)(record.LastOn.DayNumber - record.FirstOn.DayNumber + 1):0.#}, too few for an hourly record."), "Give every hour, or a daily record with TMAX and TMIN.");
        }

        return new(faults.Has("TOO_LARGE") || faults.Has("UTC_OFFSET_UNKNOWN") ? null : record, rows, faults.All);
    }

    private static (DateTime At, bool Zoned)? Moment(string? cell, double? offset)
    {
        if (DateTime.TryParseExact(cell, Formats, CultureInfo.InvariantCulture, DateTimeStyles.None, out var local))
        {
            return local.Year is >= 1800 and <= 2200 ? (local, false) : null;
        }

        return cell is { Length: > 16 } && DateTimeOffset.TryParse(cell, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var zoned) && zoned.Year is >= 1800 and <= 2200
            ? (zoned.UtcDateTime.AddHours(offset ?? 0), true)
            : null;
    }

    /// <summary>Columns from 0; -1 = not there.</summary>
    internal sealed record Found(int Time, int Hour, int Temperature, string? Unit);
}
