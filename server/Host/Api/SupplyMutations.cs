using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Host.Loading;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A tank or meter to save; no id = a new one.</summary>
public sealed record SaveSupplyGroupInput(
    [property: Id] string? Id, int? ExpectedRevision, [property: Id] string RequestId, [property: Id] string FarmId, string Name, FuelKind Fuel, SupplyKind Kind, double? TankSizeL, IReadOnlyList<string>? OtherUses, double? BaseUseKwhPerDay, double? ThermsPerCcf);

/// <summary>A line of a quote to save.</summary>
public sealed record QuoteLineInput([property: Id] string HouseId, string RetrofitCode, double Usd, string Category, bool? Eligible);

/// <summary>A quote to save; no id = a new one.</summary>
public sealed record SaveQuoteInput(
    [property: Id] string? Id, int? ExpectedRevision, [property: Id] string RequestId, [property: Id] string FarmId, string? Supplier, DateOnly QuotedOn, DateOnly? ValidUntilOn, QuoteFirmness Firmness, IReadOnlyList<QuoteLineInput> Lines);

/// <summary>Tanks, meters, contracts and quotes.</summary>
public sealed partial class Mutation
{
    /// <summary>Saves a tank or meter.</summary>
    public static SavePayload SaveSupplyGroup([FromServices] Register register, SaveSupplyGroupInput input)
    {
        var known = input.Id is null ? null : register.Groups.GetValueOrDefault(input.Id);
        if (input.Id is not null && known is null)
        {
            return Missing("tank or meter");
        }

        var faults = new List<Fault>();
        if (string.IsNullOrWhiteSpace(input.Name))
        {
            faults.Add(new("EMPTY", "name", "The tank or meter has no name.", "Give it one, such as tank A."));
        }

        Within(faults, "tankSizeL", input.TankSizeL, 50, 2e6, "L");
        Within(faults, "baseUseKwhPerDay", input.BaseUseKwhPerDay, 0, 1e5, "kWh a day");
        Within(faults, "thermsPerCcf", input.ThermsPerCcf, 0.8, 1.3, "therms a hundred cubic feet");
        if (known is not null && known.Facts.Fuel != input.Fuel && (register.Records.Values.Any(r => r.Facts.SupplyGroupId == known.Id && r.Facts.Entries.Count > 0) || register.Contracts.Values.Any(c => c.Facts.SupplyGroupId == known.Id)))
        {
            faults.Add(new("IN_USE", "fuel", "Its fuel record and contract are in the present fuel.", "Add another tank or meter for the other fuel."));
        }

        if (known is not null && known.Facts.Fuel != input.Fuel && register.Houses.Values.Where(h => h.Facts.Supplies.Any(s => s.SupplyGroupId == known.Id && s.HeaterNo < h.Facts.Heaters.Count && h.Facts.Heaters[Math.Max(0, s.HeaterNo)].Fuel != input.Fuel)).Select(h => h.Remarks.Name).ToList() is { Count: > 0 } burning)
        {
            faults.Add(new("FUEL_MISMATCH", "fuel", $"{string.Join(", ", burning.Take(3))}{(burning.Count > 3 ? $" and {burning.Count - 3} more" : string.Empty)} hang on it with heaters for {known.Facts.Fuel}.", "Change their heaters first, or add another tank or meter."));
        }

        var facts = (known?.Facts ?? new() { FarmId = input.FarmId, Fuel = input.Fuel, Kind = input.Kind }) with
        {
            Fuel = input.Fuel,
            Kind = input.Kind,
            TankSizeL = input.Kind == SupplyKind.Tank ? input.TankSizeL : null,
            OtherUses = [.. (input.OtherUses ?? []).Where(u => !string.IsNullOrWhiteSpace(u)).Select(u => known?.Facts.OtherUses.FirstOrDefault(o => o.What == u.Trim()) ?? new OtherUse(u.Trim()))],
            BaseUseKwhPerDay = input.BaseUseKwhPerDay,
            ThermsPerCcf = input.ThermsPerCcf,
        };
        return faults.Count > 0
            ? new(null, false, faults.Select(FaultView.Of))
            : Saved(register.Items.Save(register.Viewer, register.Coop.Id, known is null ? $"{input.Name.Trim()} is added" : $"{input.Name.Trim()} is changed", input.RequestId, [new(ItemKind.SupplyGroup, input.Id, input.ExpectedRevision, facts, (known?.Remarks ?? new()) with { Name = input.Name.Trim() })]));
    }

    /// <summary>Saves a quote.</summary>
    public static SavePayload SaveQuote([FromServices] Register register, SaveQuoteInput input)
    {
        var known = input.Id is null ? null : register.Quotes.GetValueOrDefault(input.Id);
        if (input.Id is not null && known is null)
        {
            return Missing("quote");
        }

        var faults = new List<Fault>();
        if (input.Lines.Count == 0)
        {
            faults.Add(new("EMPTY", "lines", "The quote has no line.", "Give a house, a retrofit and a sum."));
        }

        if (input.ValidUntilOn is { } until && until < input.QuotedOn)
        {
            faults.Add(new("OUT_OF_ORDER", "validUntilOn", "The quote ends before its date.", "Give a last day on or after the date of the quote."));
        }

        foreach (var line in input.Lines)
        {
            Within(faults, "lines", line.Usd, 0.01, 1e7, "$");
            if (!register.Houses.TryGetValue(line.HouseId, out var house) || house.Facts.FarmId != input.FarmId)
            {
                faults.Add(new("NOT_FOUND", "lines", "A line names a house that is not this farm's.", "Choose one of the farm's houses."));
            }

            if (register.Catalogue.Find(CatalogueKind.Retrofit, line.RetrofitCode) is null)
            {
                faults.Add(new("UNKNOWN_CODE", "lines", $"There is no retrofit \"{line.RetrofitCode}\" in the catalogue.", "Choose one of the catalogue's."));
            }

            if (!QuoteSheet.Categories.Contains(line.Category, StringComparer.Ordinal))
            {
                faults.Add(new("UNKNOWN_WORD", "lines", $"\"{line.Category}\" is no part of a quote.", $"Write one of {string.Join(", ", QuoteSheet.Categories)}."));
            }
        }

        var facts = new QuoteFacts
        {
            FarmId = input.FarmId,
            QuotedOn = input.QuotedOn,
            ValidUntilOn = input.ValidUntilOn,
            Firmness = input.Firmness,
            Lines = [.. input.Lines.Select(l => new QuoteLine(l.HouseId, l.RetrofitCode, (long)Math.Round(l.Usd * 100), l.Category, l.Eligible ?? true))],
        };
        return faults.Count > 0
            ? new(null, false, faults.Select(FaultView.Of))
            : Saved(register.Items.Save(register.Viewer, register.Coop.Id, $"quote of {input.QuotedOn:yyyy-MM-dd} is {(known is null ? "added" : "changed")}", input.RequestId, [new(ItemKind.Quote, input.Id, input.ExpectedRevision, facts, (known?.Remarks ?? new()) with { Supplier = input.Supplier?.Trim() })]));
    }

    private static void Within(List<Fault> faults, string field, double? value, double low, double high, string unit)
    {
        if (value is { } v && !(v >= low && v <= high))
        {
            faults.Add(new("OUT_OF_RANGE", field, $"{v:#,0.###} is outside {low:0.###} to {high:#,0}.", $"Give a figure between {low:0.###} and {high:#,0} {unit}."));
        }
    }
}
