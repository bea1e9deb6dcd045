namespace FarmPortfolio.Host.Loading;

/// <summary>NOAA's daily CSV with a head: STATION, NAME, DATE, TMAX, TMIN and more, in any order. The unit may stand in the head, under it, or be told by the range.</summary>
internal static class HeadedDaily
{
    private static readonly string[] Dates = ["date", "day"];
    private static readonly string[] Highs = ["tmax", "max temp", "max temperature", "maximum temperature", "high", "temp max", "temperature max"];
    private static readonly string[] Lows = ["tmin", "min temp", "min temperature", "minimum temperature", "low", "temp min", "temperature min"];

    /// <summary>Where the columns stand, by name; null when one is missing.</summary>
    internal static Found? Columns(string[] cells)
    {
        var heads = cells.Select(c => HeadCell.Of(c, w => TemperatureUnits.Of(w) is not null)).ToArray();
        int Find(params string[] names) => Array.FindIndex(heads, h => names.Contains(h.Name, StringComparer.Ordinal));
        var (date, max, min) = (Find(Dates), Find(Highs), Find(Lows));
        return date < 0 || max < 0 || min < 0
            ? null
            : new(date, max, min, Find("station", "station id", "id"), Find("name", "station name"), Find("latitude"), Find("longitude"), Find("elevation"), heads[max].Unit ?? heads[min].Unit);
    }

    internal static Loaded<WeatherRecord> Read(SourceText text, int headLine, WeatherAnswers answers, FaultList faults)
    {
        var (table, rows, place, dates) = (new DailyTable(faults), 0, new StationPlace(), new SlashDates());
        Found? at = null;
        string? elsewhere = null;
        foreach (var (line, cells) in TableRows.Of(text, faults))
        {
            if (at is null)
            {
                at = line >= headLine ? Columns(cells) : null;
                if (at is not null)
                {
                    SheetHead.Doubled([.. cells.Select(c => HeadCell.Of(c, w => TemperatureUnits.Of(w) is not null).Name)], [at.Date, at.Max, at.Min, at.Station], line, faults);
                }

                (table.Told, table.ToldAt) = (at?.Unit, (line, at?.Max + 1));
                continue;
            }

            if (rows == 0 && TemperatureUnits.Of(cells.ElementAtOrDefault(at.Max)) is { } unit)
            {
                (table.Told, table.ToldAt) = (unit, (line, at.Max + 1));
                continue;
            }

            if (rows++ == 0)
            {
                place = Place(cells, at);
            }
            else if (at.Station >= 0 && cells.ElementAtOrDefault(at.Station) is { } station && station != place.Code)
            {
                if (station != elsewhere)
                {
                    faults.Add("TWO_STATIONS", "STATION", $"Station {WeatherCells.Short(station)} stands in the file of {place.Code}.", "Give one station a file; only the first one's rows are taken.", line, at.Station + 1);
                    elsewhere = station;
                }

                continue;
            }

            dates.See(cells.ElementAtOrDefault(at.Date), line, at.Date + 1);
            if (WeatherCells.Day(cells.ElementAtOrDefault(at.Date), line, at.Date + 1, faults) is { } day)
            {
                table.Add(day, WeatherCells.Number(cells.ElementAtOrDefault(at.Min), "TMIN", line, at.Min + 1, faults), WeatherCells.Number(cells.ElementAtOrDefault(at.Max), "TMAX", line, at.Max + 1, faults),
                    line, (at.Date + 1, at.Min + 1, at.Max + 1));
            }
        }

        return dates.InDoubt(faults) ? new(null, rows, faults.All) : Ended(table, rows, faults, "a daily CSV with a head", answers.Unit, null, place);
    }

    /// <summary>The record, or the fault that there is no day in it.</summary>
    internal static Loaded<WeatherRecord> Ended(DailyTable table, int rows, FaultList faults, string layout, string? asked, string? byLayout, StationPlace place)
    {
        if (table.Count == 0)
        {
            faults.Add("EMPTY", null, "The file holds no day.", "Give at least one season of days.");
        }

        var record = table.Count == 0 || faults.Has("TOO_LARGE") ? null : table.Finish(layout, asked, byLayout, place);
        return new(record, rows, faults.All);
    }

    private static StationPlace Place(string[] cells, Found at)
    {
        double? Degrees(int column, double most) =>
            column >= 0 && double.TryParse(cells.ElementAtOrDefault(column), System.Globalization.CultureInfo.InvariantCulture, out var v) && Math.Abs(v) <= most ? v : null;
        string? Word(int column) => column >= 0 && cells.ElementAtOrDefault(column) is { Length: > 0 } word ? word : null;
        return new(Word(at.Station), Word(at.Name), Degrees(at.Latitude, 90), Degrees(at.Longitude, 180), Degrees(at.Elevation, 9000));
    }

    /// <summary>Columns from 0; -1 = not there.</summary>
    internal sealed record Found(int Date, int Max, int Min, int Station, int Name, int Latitude, int Longitude, int Elevation, string? Unit);
}
