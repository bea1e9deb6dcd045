using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Host.Loading;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A line of a fuel record to save.</summary>
public sealed record FuelEntryInput(
    FuelEntryKind Kind, DateOnly FromOn, DateOnly ToOn, double? Quantity, string Unit, double? TotalUsd, double? PriceUsdPerUnit, double? FeesUsd, ReadKind? Read, double? GaugeBeforePct, double? GaugeAfterPct,
    double? ThermsPerCcf, bool? Confirmed, DateOnly? IssuedOn, string? Note, string? TakenOut, double? SpreadShare);

/// <summary>A fuel record to save, all its lines; or only to look at.</summary>
public sealed record SaveFuelRecordInput([property: Id] string SupplyGroupId, int? ExpectedRevision, [property: Id] string RequestId, bool? CheckOnly, bool? AutomaticDelivery, IReadOnlyList<FuelEntryInput> Entries);

/// <summary>Tickets or bills to bring in from a sheet, added to what is there.</summary>
public sealed record ImportFuelRecordInput([property: Id] string SupplyGroupId, [property: Id] string RequestId, string Text, string FileName, string? Unit, bool? CheckOnly, bool? GoodRowsOnly);

/// <summary>What came of a fuel record, and what it would say.</summary>
public sealed record FuelRecordPayload([property: Id] string? ChangeId, bool Conflict, int Rows, string Words, IEnumerable<FaultView> Faults, FuelBillsView? Preview);

/// <summary>Delivery tickets and utility bills.</summary>
public sealed partial class Mutation
{
    /// <summary>Saves the lines of a fuel record as they were typed. A line that is asked about is kept and held, never refused and never dropped.</summary>
    public static FuelRecordPayload SaveFuelRecord([FromServices] Register register, [FromServices] TimeProvider clock, SaveFuelRecordInput input)
    {
        if (!register.Groups.TryGetValue(input.SupplyGroupId, out var group))
        {
            return new(null, false, 0, string.Empty, Missing("tank or meter").Faults, null);
        }

        var (fuel, known) = (group.Facts.Fuel, register.RecordOf(group.Id));
        var facts = new FuelRecordFacts { SupplyGroupId = group.Id, AutomaticDelivery = input.AutomaticDelivery, Entries = [.. input.Entries.Select(e => Entry(fuel, e)).OrderBy(e => e.ToOn)] };
        var future = facts.Entries.Select((e, i) => InFuture(e, clock, known?.Facts.Entries ?? [], null, i + 1)).OfType<Fault>().Select(FaultView.Of).ToList();
        if (input.CheckOnly == true || future.Count > 0)
        {
            return new(null, false, facts.Entries.Count, string.Empty, future, new(register, group.Id, facts, known, register.Fit(group.Id, facts)));
        }

        var outcome = register.Items.Save(register.Viewer, register.Coop.Id, $"{facts.Entries.Count} {(facts.Entries.Count == 1 ? "line of fuel is" : "lines of fuel are")} kept for {group.Remarks.Name}", input.RequestId,
            [new(ItemKind.FuelRecord, known?.Id, input.ExpectedRevision, facts, known?.Remarks ?? new())]);
        return new(outcome.ChangeId, outcome.ConflictItemId is not null, facts.Entries.Count, string.Empty, outcome.Faults.Select(FaultView.Of), null);
    }

    /// <summary>Looks at a sheet of tickets or bills, and adds its rows to the record when asked and sound. Rows that the record holds already are named and left out.</summary>
    public static FuelRecordPayload ImportFuelRecord([FromServices] Register register, [FromServices] TimeProvider clock, ImportFuelRecordInput input)
    {
        if (!register.Groups.TryGetValue(input.SupplyGroupId, out var group))
        {
            return new(null, false, 0, string.Empty, Missing("tank or meter").Faults, null);
        }

        using var text = new SourceText(new StringReader(input.Text), input.FileName);
        var loaded = FuelSheet.Read(text, group.Facts.Fuel, group.Facts.Kind, string.IsNullOrWhiteSpace(input.Unit) ? null : input.Unit, new(register.WintersOf(group.Id)));
        var known = register.RecordOf(group.Id);
        var faults = loaded.Faults.ToList();
        var (there, added) = (known?.Facts.Entries ?? [], new List<FuelEntry>());
        foreach (var (line, entry) in loaded.Value?.Entries ?? [])
        {
            if (there.Any(e => e.Kind == entry.Kind && e.FromOn == entry.FromOn && e.ToOn == entry.ToOn && e.Unit == entry.Unit && Math.Abs(e.Quantity - entry.Quantity) < 1e-9))
            {
                faults.Add(new("ALREADY_THERE", null, $"The record holds this line of {entry.ToOn:yyyy-MM-dd} already; it is not added again.", "Nothing to do; where there were two such deliveries, add the second by hand.", input.FileName, line));
            }
            else if (InFuture(entry, clock, there, input.FileName, line) is { } wrong)
            {
                faults.Add(wrong);
            }
            else
            {
                added.Add(entry);
            }
        }

        var facts = (known?.Facts ?? new() { SupplyGroupId = group.Id }) with { Entries = [.. there.Concat(added).OrderBy(e => e.ToOn)] };
        var words = loaded.Value is null ? "Nothing could be read." : $"{added.Count} of {loaded.Rows} {(loaded.Rows == 1 ? "row" : "rows")} {(added.Count == 1 ? "is" : "are")} to be added. {string.Join(' ', loaded.Notes)}".TrimEnd();
        var refused = faults.Any(f => f.Code is not ("UNKNOWN_COLUMN" or "ALREADY_THERE" or "DEGREE_DAYS_DIFFER")) && input.GoodRowsOnly != true;
        if (added.Count == 0 || input.CheckOnly != false || refused)
        {
            return new(null, false, loaded.Rows, words, faults.Select(FaultView.Of), added.Count > 0 ? new(register, group.Id, facts, known, register.Fit(group.Id, facts)) : null);
        }

        var outcome = register.Items.Save(register.Viewer, register.Coop.Id, $"{added.Count} {(added.Count == 1 ? "line of fuel is" : "lines of fuel are")} brought in from {input.FileName}", input.RequestId,
            [new(ItemKind.FuelRecord, known?.Id, known?.Revision, facts, known?.Remarks ?? new())]);
        return new(outcome.ChangeId, outcome.ConflictItemId is not null, loaded.Rows, words, faults.Concat(outcome.Faults).Select(FaultView.Of), null);
    }

    /// <summary>A new line dated after today; a day is left for places east of the server.</summary>
    private static Fault? InFuture(FuelEntry entry, TimeProvider clock, IReadOnlyList<FuelEntry> known, string? file, int line)
    {
        var today = DateOnly.FromDateTime(clock.GetUtcNow().UtcDateTime);
        return entry.ToOn <= today.AddDays(1) || entry.Held is not null || known.Any(e => e.Kind == entry.Kind && e.ToOn == entry.ToOn && e.Unit == entry.Unit && Math.Abs(e.Quantity - entry.Quantity) < 1e-9)
            ? null
            : new("IN_FUTURE", "toOn", $"{entry.ToOn:yyyy-MM-dd} has not come yet: today is {today:yyyy-MM-dd}.", "Give the date as on the ticket or bill.", file, line);
    }

    private static FuelEntry Entry(FuelKind fuel, FuelEntryInput e)
    {
        var quantity = e.Quantity ?? 0;
        return new(e.Kind, e.Kind == FuelEntryKind.Delivery ? e.ToOn : e.FromOn, e.ToOn, quantity, e.Unit, quantity * (Engine.Units.HeatingValues.KwhPerUnit(fuel, e.Unit, thermsPerCcf: e.ThermsPerCcf) ?? 0), FuelSheet.Cents(e.TotalUsd), e.Read ?? ReadKind.Unknown,
            e.GaugeBeforePct, e.GaugeAfterPct, FuelSheet.Cents(e.FeesUsd), string.IsNullOrWhiteSpace(e.TakenOut) ? null : e.TakenOut.Trim(), e.PriceUsdPerUnit, e.ThermsPerCcf, e.Quantity is null, e.Confirmed == true, e.IssuedOn,
            string.IsNullOrWhiteSpace(e.Note) ? null : e.Note.Trim(), e.SpreadShare);
    }
}
