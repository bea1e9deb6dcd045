using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>One number of the catalogue: what is built in, and the co-op's own where it has one.</summary>
[Name("CatalogueFigure")]
public sealed record CatalogueFigureView(
    CatalogueKind Kind, string Code, string Of, string Name, string Title, double Value, double? BuiltIn, string Unit, double? Low, double? High, string Status, string? Source, bool IsOwn, string? Reason);

/// <summary>An own number of a catalogue entry to save; no value = back to the built-in one. SI.</summary>
public sealed record CatalogueFigureInput([property: Id] string RequestId, CatalogueKind Kind, string Code, string Name, double? Value, string? Reason);

/// <summary>The catalogue with the co-op's own entries.</summary>
public sealed partial class CoopView
{
    /// <summary>Every number that studies and forms take where nobody says otherwise.</summary>
    public IEnumerable<CatalogueFigureView> CatalogueFigures
    {
        get
        {
            var own = register.Items.All<CatalogueFacts>(register.Viewer, register.Coop.Id, ItemKind.CatalogueEntry).ToDictionary(e => (e.Facts.Kind, e.Facts.Code));
            return register.Catalogue.Entries.SelectMany(e => e.Values.Select(v =>
            {
                var built = Catalogue.BuiltIn.Find(e.Kind, e.Code)?.Values.GetValueOrDefault(v.Key);
                var mine = own.TryGetValue((e.Kind, e.Code), out var entry) && entry.Facts.Values.ContainsKey(v.Key);
                return new CatalogueFigureView(
                    e.Kind, e.Code, e.Title, v.Key, CatalogueTitles.Of(v.Key), v.Value.Value, built?.Value, built?.Unit ?? v.Value.Unit, built?.Low, built?.High, v.Value.Status.ToString(), v.Value.Source, mine, mine ? v.Value.Source : null);
            }));
        }
    }
}

/// <summary>Own numbers of the catalogue.</summary>
public sealed partial class Mutation
{
    /// <summary>Lays an own number over the catalogue's, with its reason, or takes it back.</summary>
    public static SavePayload SaveCatalogueFigure([FromServices] Register register, CatalogueFigureInput input)
    {
        if (Catalogue.BuiltIn.Find(input.Kind, input.Code) is not { } built || !built.Values.TryGetValue(input.Name, out var known))
        {
            return Missing("number in the catalogue");
        }

        var faults = CheckOwn(input, known);
        if (faults.Count > 0)
        {
            return new(null, false, faults);
        }

        var own = register.Items.All<CatalogueFacts>(register.Viewer, register.Coop.Id, ItemKind.CatalogueEntry).FirstOrDefault(e => e.Facts.Kind == input.Kind && e.Facts.Code == input.Code);
        var values = new Dictionary<string, CatalogueValue>(own?.Facts.Values ?? new Dictionary<string, CatalogueValue>());
        if (input.Value is { } value)
        {
            values[input.Name] = new(value, known.Unit, Status: ValueStatus.Entered, Source: input.Reason!.Trim());
        }
        else
        {
            values.Remove(input.Name);
        }

        if (own is null && values.Count == 0)
        {
            return new(null, false, []);
        }

        var facts = values.Count == 0 ? null : (own?.Facts ?? new CatalogueFacts { Kind = input.Kind, Code = input.Code, Title = built.Title }) with { Values = values };
        var said = $"{built.Title}: {CatalogueTitles.Of(input.Name)} is {(input.Value is null ? "the catalogue's again" : "the co-op's own")}";
        return Saved(register.Items.Save(register.Viewer, register.Coop.Id, said, input.RequestId, [new(ItemKind.CatalogueEntry, own?.Id, own?.Revision, facts, own?.Remarks ?? new(built.Title))]));
    }

    private static List<FaultView> CheckOwn(CatalogueFigureInput input, CatalogueValue known)
    {
        var faults = new List<FaultView>();
        if (input.Value is not { } value)
        {
            return faults;
        }

        if (string.IsNullOrWhiteSpace(input.Reason))
        {
            faults.Add(new("EMPTY", "reason", "An own number needs its reason.", "Say where it comes from: a quote, a bill, a count of one's own.", null, null));
        }

        // a share stays a share; anything else may be ten times off the built-in figure before it is taken for a slip of the unit
        var (low, high) = known.Unit switch
        {
            "1" when known.Value is >= 0 and <= 1 => (0.0, 1.5),
            _ when known.Value == 0 => (-1e6, 1e6),
            "C" => (-40.0, 60.0),
            _ => (Math.Min(0, known.Value * 10), Math.Max(Math.Abs(known.Value) * 10, known.High * 2 ?? 0)),
        };
        if (!(value >= low && value <= high))
        {
            faults.Add(new("OUT_OF_RANGE", "value", $"{value:0.####} {known.Unit} is outside {low:0.##} to {high:0.##}; the catalogue has {known.Value:0.####}.", "Check the unit.", null, null));
        }

        return faults;
    }
}
