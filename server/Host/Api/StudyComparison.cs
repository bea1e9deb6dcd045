using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Host.Storage.Items;
using FarmPortfolio.Host.Studies;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A field that differs.</summary>
[Name("FieldDifference")]
public sealed record FieldDifferenceView(string Title, string? Left, string? Right);

/// <summary>An input that differs.</summary>
[Name("InputDifference")]
public sealed record InputDifferenceView([property: Id] string ItemId, string Kind, string Name, string State, IEnumerable<FieldDifferenceView> Fields)
{
    /// <summary>From what the comparison found.</summary>
    internal static InputDifferenceView Of(InputChange c) => new(c.ItemId, c.Kind.Replace('_', ' '), c.Name, c.State, c.Fields.Select(f => new FieldDifferenceView(f.Title, f.Left, f.Right)));
}

/// <summary>An option in two studies; a side is null where that study has it not.</summary>
[Name("OptionDifference")]
public sealed record OptionDifferenceView([property: Id] string OptionId, string House, string Title, OptionResultView? Left, OptionResultView? Right);

/// <summary>Two studies side by side.</summary>
[Name("StudyComparison")]
public sealed record StudyComparisonView(StudyView Left, StudyView Right, IEnumerable<InputDifferenceView> Inputs, int SameOptions, IEnumerable<OptionDifferenceView> Options);

/// <summary>What changed since a study.</summary>
public sealed partial class StudyView
{
    /// <summary>What changed since that the study really read: names of the items; empty = up to date.</summary>
    public IEnumerable<string> ChangedSince([FromServices] StudyChanges changes) => changes.Since(register.Viewer, row).Select(c => c.Name);

    /// <summary>The same field by field.</summary>
    public IEnumerable<InputDifferenceView> Differences([FromServices] StudyChanges changes) => changes.Since(register.Viewer, row).Select(InputDifferenceView.Of);
}

/// <summary>Studies side by side.</summary>
public sealed partial class Query
{
    private const int ShownOptions = 40;

    /// <summary>What differs between two done studies, in inputs and in results; the options that moved most first.</summary>
    public static StudyComparisonView? StudyComparison([FromServices] Register register, [FromServices] StudyChanges changes, [Id] string left, [Id] string right)
    {
        if (register.Studies.Find(register.Viewer, left) is not { } l || register.Studies.Find(register.Viewer, right) is not { } r || register.Jobs.Result(register.Viewer, left) is not { } before || register.Jobs.Result(register.Viewer, right) is not { } after)
        {
            return null;
        }

        var (a, b) = (ByKey(before), ByKey(after));
        var both = a.Keys.Union(b.Keys).Select(k => (Key: k, Left: a.GetValueOrDefault(k), Right: b.GetValueOrDefault(k))).ToList();
        var moved = both.Where(o => o.Left is null || o.Right is null || o.Left.SavingUsd != o.Right.SavingUsd || o.Left.Lasting.NeverShare != o.Right.Lasting.NeverShare)
            .OrderByDescending(o => Math.Abs((o.Right?.NpvUsd.P50 ?? 0) - (o.Left?.NpvUsd.P50 ?? 0))).ThenBy(o => o.Key.HouseId, StringComparer.Ordinal).ThenBy(o => o.Key.Key, StringComparer.Ordinal).ToList();
        return new(new(register, l), new(register, r), changes.Between(register.Viewer, l, r).Select(InputDifferenceView.Of), both.Count - moved.Count,
            moved.Take(ShownOptions).Select(o => new OptionDifferenceView($"{o.Key.HouseId}~{o.Key.Key}", HouseName(register, o.Key.HouseId), Title(register, o.Key.HouseId, o.Key.Key),
                o.Left is null ? null : new(o.Left, before.DiscountRate), o.Right is null ? null : new(o.Right, after.DiscountRate))));

        static Dictionary<(string HouseId, string Key), OptionResult> ByKey(StudyResult result) => result.Options.ToDictionary(o => (o.HouseId, o.Key));
        static string HouseName(Register register, string id) => register.Houses.TryGetValue(id, out var h) ? $"{(register.Farms.TryGetValue(h.Facts.FarmId, out var f) ? f.Remarks.Name : "a farm")}, {h.Remarks.Name}" : "a house since deleted";
        static string Title(Register register, string house, string key) =>
            register.Houses.TryGetValue(house, out var h) && register.OptionSet(house)?.Facts.Options.FirstOrDefault(o => o.Key == key) is { } option ? new OptionView(register, h, option).Title : key;
    }
}
