using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Host.Loading;

/// <summary>Where the columns of one houses' sheet stand, in which unit, and how a row's cells are read.</summary>
internal sealed class HouseCells
{
    private const double MostSalesUsd = 1e9;
    private readonly Dictionary<HouseColumn, int> at;
    private readonly Dictionary<HouseColumn, string> units;
    private readonly Catalogue catalogue;
    private readonly bool? si;
    private int columns;

    private HouseCells(Dictionary<HouseColumn, int> at, Dictionary<HouseColumn, string> units, Catalogue catalogue, bool? si) => (this.at, this.units, this.catalogue, this.si) = (at, units, catalogue, si);

    /// <summary>Reads the head; null where the row is none.</summary>
    public static HouseCells? Head(string[] row, int line, Catalogue catalogue, bool? si, FaultList faults)
    {
        var heads = row.Select(c => HeadCell.Of(c, HouseColumns.IsUnit)).ToArray();
        if (!heads.Any(h => HouseColumns.Find(h.Name) == HouseColumn.Farm))
        {
            return null;
        }

        var (at, units, unknown) = (new Dictionary<HouseColumn, int>(), new Dictionary<HouseColumn, string>(), new List<(int, string)>());
        for (var i = 0; i < heads.Length; i++)
        {
            if (HouseColumns.Find(heads[i].Name) is not { } column)
            {
                if (heads[i].Name.Length > 0)
                {
                    unknown.Add((i, row[i]));
                }
            }
            else if (!at.TryAdd(column, i))
            {
                SheetHead.Twice(heads[i].Name, line, i, faults);
            }
            else if (heads[i].Unit is { } unit && HouseColumns.Units(column).Count > 0)
            {
                if (HouseColumns.Units(column).ContainsKey(HouseColumns.Lower(unit)))
                {
                    units[column] = HouseColumns.Lower(unit);
                }
                else
                {
                    faults.Add("UNKNOWN_UNIT", heads[i].Name, $"\"{unit}\" is no unit of {heads[i].Name}.", $"Write one of {string.Join(", ", HouseColumns.Units(column).Keys)}.", line, i + 1);
                }
            }
        }

        SheetHead.Unknown(unknown, string.Join(", ", HouseColumns.Names.Values.Select(n => n[0])), line, faults);
        return new(at, units, catalogue, si) { columns = row.Length };
    }

    /// <summary>Column from 1; null = not there.</summary>
    public int? ColumnOf(HouseColumn column) => at.TryGetValue(column, out var i) ? i + 1 : null;

    /// <summary>Takes a row of units; false where the row is none.</summary>
    public bool TakeUnits(string[] row)
    {
        var told = row.Where(c => c.Length > 0).ToList();
        if (told.Count == 0 || !told.All(HouseColumns.IsUnit))
        {
            return false;
        }

        foreach (var (column, i) in at)
        {
            if (row.ElementAtOrDefault(i) is { Length: > 0 } unit && HouseColumns.Units(column).ContainsKey(HouseColumns.Lower(unit)))
            {
                units[column] = HouseColumns.Lower(unit);
            }
        }

        return true;
    }

    /// <summary>Asks for the units that are told nowhere; false where one is missing.</summary>
    public bool AskUnits(int line, FaultList faults)
    {
        var lacking = at.Keys.Where(c => HouseColumns.Units(c).Count > 0 && !units.ContainsKey(c) && (c == HouseColumn.Used ? !at.ContainsKey(HouseColumn.UsedUnit) : si is null)).ToList();
        foreach (var column in lacking)
        {
            var name = HouseColumns.Names[column][0];
            var otherwise = column == HouseColumn.Used ? "or in a column \"unit used\" row by row" : "or say whether the sheet is in US customary units or SI";
            faults.Add("UNIT_NOT_TOLD", name, $"The unit of \"{name}\" is told nowhere.", $"Write it in the head, such as \"{name} ({HouseColumns.Usual(column, false)})\", {otherwise}.", line, ColumnOf(column));
        }

        return lacking.Count == 0;
    }

    /// <summary>Asks whether a size in feet was meant in metres: 9 by 29 is a house of 30 by 96 ft. The row stands.</summary>
    private void AskMetres(HouseRow row, int line, FaultList faults)
    {
        var (w, l) = (row.WidthM / Us.FootM, row.LengthM / Us.FootM);
        var inFeet = (units.GetValueOrDefault(HouseColumn.Width) ?? HouseColumns.Usual(HouseColumn.Width, si ?? true)) is "ft" or "feet" or "foot";
        if (inFeet && w is >= 4 and <= 13 && l is >= 10 and <= 60)
        {
            faults.Add("LIKE_METRES", HouseColumns.Names[HouseColumn.Width][0], FormattableString.Invariant($"{w:0.##} by {l:0.##} ft is a very small house."), "If these are metres, write m under the head or choose metres for the sheet. If they are feet, keep the good rows: this one is among them.", line, ColumnOf(HouseColumn.Width));
        }
    }

    /// <summary>Reads a row; null where something in it cannot stand.</summary>
    public HouseRow? Row(string[] row, int line, FaultList faults)
    {
        var before = faults.Count;
        if (SheetHead.TooLong(row, columns, line, faults))
        {
            return null;
        }

        string? Cell(HouseColumn c) => at.TryGetValue(c, out var i) && row.ElementAtOrDefault(i) is { Length: > 0 } cell ? cell : null;
        void Bad(HouseColumn c, string code, string message, string remedy) => faults.Add(code, HouseColumns.Names[c][0], message, remedy + " The row is left out.", line, ColumnOf(c));
        double? Number(HouseColumn c)
        {
            if (Cell(c) is not { } cell)
            {
                return null;
            }

            if (SheetNumber.Of(cell.TrimStart('$')) is not { } value)
            {
                Bad(c, "NOT_A_NUMBER", $"\"{WeatherCells.Short(cell)}\" is no number.", SheetNumber.Remedy(cell, "Write a number such as 30 or 2.5, without its unit."));
                return null;
            }

            var known = HouseColumns.Units(c);
            if (known.Count == 0)
            {
                return value;
            }

            var unit = units.GetValueOrDefault(c) ?? HouseColumns.Usual(c, si!.Value);
            return (unit is "f" or "fahrenheit" ? value - 32 : value) * known[unit];
        }

        int? Whole(HouseColumn c, int low, int high)
        {
            if (Number(c) is not { } value)
            {
                return null;
            }

            if (value != Math.Floor(value) || value < low || value > high)
            {
                Bad(c, "OUT_OF_RANGE", $"{value:0.##} cannot be.", $"Give a whole number from {low} to {high}.");
                return null;
            }

            return (int)value;
        }

        T? Word<T>(HouseColumn c, Func<string, T?> known, string right)
            where T : struct
        {
            if (Cell(c) is not { } cell)
            {
                return null;
            }

            var value = known(cell);
            if (value is null)
            {
                Bad(c, "UNKNOWN_WORD", $"\"{WeatherCells.Short(cell)}\" is not known.", $"Write {right}.");
            }

            return value;
        }

        string? Code(HouseColumn c, CatalogueKind kind)
        {
            if (Cell(c) is not { } cell)
            {
                return null;
            }

            var code = HouseWords.Code(catalogue, kind, cell);
            if (code is null)
            {
                Bad(c, "UNKNOWN_CODE", $"\"{WeatherCells.Short(cell)}\" is not in the catalogue.", $"Write one of {HouseWords.Codes(catalogue, kind)}.");
            }

            return code;
        }

        if (Cell(HouseColumn.Farm) is not { } farm)
        {
            Bad(HouseColumn.Farm, "EMPTY", "The row names no farm.", "Give the farm's name in each row.");
            return null;
        }

        var house = Cell(HouseColumn.House);
        var result = new HouseRow(line, farm.Trim())
        {
            Place = Cell(HouseColumn.Place),
            Station = Cell(HouseColumn.Station),
            House = house?.Trim(),
            SalesCents = Sales(),
            Shape = Word<HouseShape>(HouseColumn.Shape, HouseWords.Shape, HouseWords.ShapeNames) ?? HouseShape.Hoop,
            BayRoof = Word<HouseShape>(HouseColumn.BayRoof, HouseWords.Shape, "hoop, Gothic arch or gable"),
            Bays = Whole(HouseColumn.Bays, 1, 60) ?? 1,
            WidthM = Number(HouseColumn.Width) ?? double.NaN,
            LengthM = Number(HouseColumn.Length) ?? double.NaN,
            SideWallM = Number(HouseColumn.SideWall),
            RidgeM = Number(HouseColumn.Ridge),
            CoveringCode = Code(HouseColumn.Covering, CatalogueKind.Covering),
            FilmYear = Whole(HouseColumn.FilmYear, 1950, 2100),
            PlanCode = Code(HouseColumn.Plan, CatalogueKind.HeatingPlan),
            HeaterCode = Code(HouseColumn.Heater, CatalogueKind.Heater),
            HeaterYear = Whole(HouseColumn.HeaterYear, 1950, 2100),
            InputKw = Number(HouseColumn.Input),
            Efficiency = Number(HouseColumn.Efficiency) is { } e ? e > 1.5 ? e / 100 : e : null,
            Fuel = Word<Engine.FuelKind>(HouseColumn.Fuel, HouseWords.Fuel, HouseWords.FuelNames),
            Supply = Cell(HouseColumn.Supply)?.Trim(),
            TankSizeL = Number(HouseColumn.TankSize),
            AirChangesPerHour = Number(HouseColumn.AirChanges),
            Installed = [.. (Cell(HouseColumn.Installed) ?? string.Empty).Split([';', '+', '/'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(Installed).OfType<string>()],
        };
        result = result with { Used = UsedFuelCells.Of(Cell, units.GetValueOrDefault(HouseColumn.Used), ColumnOf(HouseColumn.Used), house is not null, Bad) };
        var (from, to) = (Word<MonthDay>(HouseColumn.HeatedFrom, HouseWords.Day, "a day such as 15 Feb or 2/15"), Word<MonthDay>(HouseColumn.HeatedTo, HouseWords.Day, "a day such as 31 May or 5/31"));
        var (night, day) = (Number(HouseColumn.Night), Number(HouseColumn.Day));
        if (house is not null && (double.IsNaN(result.WidthM) || double.IsNaN(result.LengthM)) && faults.Count == before)
        {
            Bad(double.IsNaN(result.WidthM) ? HouseColumn.Width : HouseColumn.Length, "EMPTY", $"\"{house}\" has no {(double.IsNaN(result.WidthM) ? "width" : "length")}.", "Give width and length.");
        }

        if (from is null != to is null && faults.Count == before)
        {
            Bad(from is null ? HouseColumn.HeatedFrom : HouseColumn.HeatedTo, "EMPTY", "Only one end of the heated season is told.", "Give both days, or neither.");
        }
        else if (from is { } f && to is { } t)
        {
            result = result with { PlanCode = null, Period = new(f, t, night ?? Engine.Units.Us.C(60), day ?? (night is { } n ? n + 5 * Engine.Units.Us.DegreeK : Engine.Units.Us.C(65))) };
        }
        else if ((night ?? day) is not null && faults.Count == before)
        {
            Bad(HouseColumn.HeatedFrom, "EMPTY", "Set points are told, but not from when to when the house is heated.", "Give heated from and heated to, or a heating plan instead of set points.");
        }

        if (faults.Count != before)
        {
            return null;
        }

        AskMetres(result, line, faults);
        return result;

        long? Sales()
        {
            if (Number(HouseColumn.Sales) is not { } sales)
            {
                return null;
            }

            if (sales is >= 0 and <= MostSalesUsd)
            {
                return (long)Math.Round(sales * 100);
            }

            Bad(HouseColumn.Sales, "OUT_OF_RANGE", FormattableString.Invariant($"Sales of {sales:#,0} dollars a year cannot be."), "Give dollars a year, 0 or more.");
            return null;
        }

        string? Installed(string word)
        {
            var code = HouseWords.Code(catalogue, CatalogueKind.Retrofit, word);
            if (code is null)
            {
                Bad(HouseColumn.Installed, "UNKNOWN_CODE", $"\"{WeatherCells.Short(word)}\" is no retrofit of the catalogue.", $"Write one or more of {HouseWords.Codes(catalogue, CatalogueKind.Retrofit)}, with a semicolon between.");
            }

            return code;
        }
    }
}
