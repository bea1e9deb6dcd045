using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Weather;
using FarmPortfolio.Host.Loading;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A file to import: its text, or the identifier of a file sent before to /uploads.</summary>
public sealed record ImportInput([property: Id] string RequestId, string FileName, string? Text, string Name, bool? GoodRowsOnly, bool? CheckOnly, string? Unit, double? LatitudeDeg, double? ElevationM, FuelKind? Fuel, string? PriceUnit, double? UtcOffsetHours = null, string? Column = null, [property: Id] string? UploadId = null, PriceMarket? Market = null);

/// <summary>What came of an import: what was found, and whether it was kept.</summary>
public sealed record ImportPayload(bool Kept, int Rows, string Summary, IEnumerable<FaultView> Faults)
{
    /// <summary>Whether something would be kept, of the good rows alone where some are wrong.</summary>
    public bool CanImport { get; init; }

    /// <summary>What an imported price record says and what it cannot; null where there is none.</summary>
    public IReadOnlyList<PriceFindingView>? Findings { get; init; }
}

/// <summary>Imports of weather and price records; farms, tickets and trials stand beside what they make.</summary>
public sealed partial class Mutation
{
    /// <summary>Looks at a weather record in any layout that is known, and keeps it as a station when asked and sound.</summary>
    public static ImportPayload ImportWeather([FromServices] Register register, [FromServices] UploadStore uploads, ImportInput input)
    {
        using var source = ImportSource.Open(register, uploads, input);
        if (source.Text is not { } text)
        {
            return source.Nothing;
        }

        var loaded = WeatherFile.Read(text, new(input.Unit, input.UtcOffsetHours));
        var faults = loaded.Faults.ToList();
        var latitude = input.LatitudeDeg ?? loaded.Value?.Place.LatitudeDeg;
        if (input.CheckOnly == false && latitude is not (>= -66 and <= 66))
        {
            faults.Add(new("OUT_OF_RANGE", "latitudeDeg", "The station has no latitude between -66 and 66.", "Give degrees north, such as 43.6."));
        }

        var usable = loaded.Value?.Seasons.Count(s => s.Usable) ?? 0;
        if (loaded.Value is not null && usable == 0)
        {
            faults.Add(new("NO_SEASON", "text", "No season of this record can be used: none runs from July to June with few enough gaps.", "Bring in a record of one whole season at least, July to June; ten or more tell hard winters."));
        }

        if (loaded.Value is not { } record || input.CheckOnly != false || usable == 0 || faults.Any(f => f.Field == "latitudeDeg") || (loaded.LeavesOut && input.GoodRowsOnly != true))
        {
            return new(false, loaded.Rows, Words(loaded.Value), faults.Select(FaultView.Of)) { CanImport = usable > 0 };
        }

        var seasons = record.Seasons.Where(s => s.Usable).Select(s => new StationSeason(s.Season, record.Step, register.Blobs.Save(register.Viewer, s.ValuesC), s.Days, s.MissingDays, source.FileName)).ToList();
        var name = source.NameOr(input.Name, record.Place.Name);
        var outcome = register.Items.Save(register.Viewer, register.Coop.Id, $"weather of {name} is imported from {source.FileName}", input.RequestId,
            [new(ItemKind.WeatherStation, null, null, new WeatherStationFacts { LatitudeDeg = latitude!.Value, LongitudeDeg = record.Place.LongitudeDeg ?? 0, ElevationM = input.ElevationM ?? record.Place.ElevationM ?? 0, Seasons = seasons }, new(name, Note: source.FileName))]);
        return source.Done(new(outcome.ChangeId is not null, loaded.Rows, $"{Words(record)} {seasons.Count} {(seasons.Count == 1 ? "season is" : "seasons are")} kept.", [.. faults.Concat(outcome.Faults).Select(FaultView.Of)]));

        static string Words(WeatherRecord? r) => r is null ? "Nothing could be read." : $"{r.Layout}: {r.Days:#,0} days from {r.FirstOn:yyyy-MM-dd} to {r.LastOn:yyyy-MM-dd}; unit: {r.UnitWords}.";
    }

    /// <summary>Looks at a monthly price record, and keeps it when asked and sound.</summary>
    public static ImportPayload ImportPrices([FromServices] Register register, [FromServices] UploadStore uploads, ImportInput input)
    {
        using var source = ImportSource.Open(register, uploads, input);
        if (source.Text is not { } text)
        {
            return source.Nothing;
        }

        var loaded = MonthlyPrices.Read(text, input.Column, input.Fuel);
        var faults = loaded.Faults.ToList();
        var fuel = input.Fuel ?? loaded.Value?.Fuel ?? FuelKind.Propane;
        var priceUnit = loaded.Value?.Unit ?? input.PriceUnit;
        if (input.CheckOnly == false && (priceUnit is null || Engine.Units.HeatingValues.KwhPerUnit(fuel, priceUnit) is null))
        {
            faults.Add(new("UNKNOWN_UNIT", "priceUnit", $"{fuel} is not sold by the \"{priceUnit}\".", $"Choose one of {string.Join(", ", Engine.Units.HeatingValues.UnitsOf(fuel))}."));
        }

        var words = loaded.Value is { } r ? $"{r.Layout}: {r.Prices.Count} months from {r.FirstMonthOn:yyyy-MM} to {r.LastMonthOn:yyyy-MM}{(r.Unit is null ? string.Empty : $", dollars a {r.Unit}")}." : "Nothing could be read.";
        if (loaded.Value is not { } record)
        {
            return new(false, loaded.Rows, words, faults.Select(FaultView.Of));
        }

        var market = input.Market ?? PriceMarket.Retail;
        var facts = new PriceSeriesFacts
        {
            Fuel = fuel,
            Market = market,
            Class = fuel == FuelKind.Electricity ? PriceClass.Electricity : market == PriceMarket.Wholesale ? PriceClass.WholesaleFuel : PriceClass.RetailFuel,
            Unit = priceUnit ?? string.Empty,
            FirstMonthOn = record.FirstMonthOn,
            UsdPerUnit = record.Prices,
            Source = source.FileName,
        };
        var findings = PriceFindingView.Of(facts);
        if (input.CheckOnly != false || faults.Any(f => f.Code == "UNKNOWN_UNIT") || (loaded.LeavesOut && input.GoodRowsOnly != true))
        {
            return new(false, loaded.Rows, words, faults.Select(FaultView.Of)) { Findings = findings, CanImport = true };
        }

        var outcome = register.Items.Save(register.Viewer, register.Coop.Id, $"prices {source.NameOr(input.Name)} are imported from {source.FileName}", input.RequestId, [new(ItemKind.PriceSeries, null, null, facts, new(source.NameOr(input.Name)))]);
        return source.Done(new(outcome.ChangeId is not null, loaded.Rows, words, [.. faults.Concat(outcome.Faults).Select(FaultView.Of)]) { Findings = findings });
    }
}
