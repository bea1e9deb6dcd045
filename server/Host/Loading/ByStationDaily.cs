namespace FarmPortfolio.Host.Loading;

/// <summary>
/// GHCN-Daily by-station rows without a head: ID, YYYYMMDD, ELEMENT, VALUE, measurement flag, quality flag, source flag, time of observation; tenths of a
/// degree Celsius (NOAA, readme-by_station). A value with a quality flag failed NOAA's own check and counts as missing.
/// </summary>
internal static class ByStationDaily
{
    internal static Loaded<WeatherRecord> Read(SourceText text, int headLine, WeatherAnswers answers, FaultList faults)
    {
        var (table, rows, place, elsewhere) = (new DailyTable(faults), 0, new StationPlace(), default(string));
        foreach (var (line, cells) in TableRows.Of(text, faults))
        {
            if (line < headLine)
            {
                continue;
            }

            rows++;
            var element = cells.ElementAtOrDefault(2);
            if (cells.Length < 4 || element is not { Length: 4 })
            {
                faults.Add("STRAY_TEXT", null, $"\"{WeatherCells.Short(string.Join(',', cells))}\" is no row of the layout.", "A row is ID, date, element, value and four flags.", line, 1);
                continue;
            }

            place = place.Code is null ? place with { Code = cells[0] } : place;
            if (cells[0] != place.Code)
            {
                if (cells[0] != elsewhere)
                {
                    faults.Add("TWO_STATIONS", "ID", $"Station {WeatherCells.Short(cells[0])} stands in the file of {place.Code}.", "Give one station a file; only the first one's rows are taken.", line, 1);
                    elsewhere = cells[0];
                }

                continue;
            }

            if (element is "TMAX" or "TMIN" && WeatherCells.Day(cells[1], line, 2, faults) is { } day)
            {
                var value = string.IsNullOrEmpty(cells.ElementAtOrDefault(5)) ? WeatherCells.Number(cells[3], element, line, 4, faults) : double.NaN;
                table.Add(day, element == "TMAX", value, line, 4);
            }
        }

        return HeadedDaily.Ended(table, rows, faults, "GHCN-Daily by-station rows", answers.Unit, "tenths", place);
    }
}
