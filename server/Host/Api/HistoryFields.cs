using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A field that differs between two revisions.</summary>
[Name("Difference")]
public sealed record DifferenceView(string Field, string Title, string? Was, string? Is, bool Moves);

/// <summary>One revision of an item, with what it changed.</summary>
[Name("Revision")]
public sealed record RevisionView(int Revision, [property: Id] string ChangeId, string At, string By, string Said, bool IsDeleted, IEnumerable<DifferenceView> Differences);

/// <summary>A page of revisions, newest first.</summary>
public sealed record RevisionPage(IEnumerable<RevisionView> Items, int? Next);

/// <summary>A page of changes, newest first.</summary>
public sealed record ChangePage(IEnumerable<ChangeView> Items, int? Next);

/// <summary>History of items.</summary>
public sealed partial class Query
{
    /// <summary>History of an item of the chosen co-op, newest first; <paramref name="before"/> is the last revision known.</summary>
    public static RevisionPage History([FromServices] Register register, [Id] string itemId, int first = 20, int? before = null)
    {
        if (register.Items.Where(register.Viewer, itemId) is not { } found || found.CoopId != register.Coop.Id)
        {
            return new([], null);
        }

        var most = Math.Clamp(first, 1, 100);
        var rows = register.History.History(register.Viewer, itemId, most + 1, before);
        var views = rows.Take(most).Select((r, i) =>
        {
            var earlier = i + 1 < rows.Count ? rows[i + 1] : null;
            var differences = FieldDifferences.Of(earlier?.Facts, earlier?.Remarks, r.Facts, r.Remarks);
            return new RevisionView((int)r.Revision, r.ChangeId, r.AtUtc, r.By, r.Said, r.Facts is null, earlier is null || r.Facts is null ? [] : differences.Select(d => new DifferenceView(d.Field, d.Title, d.Left, d.Right, d.Moves)));
        }).ToList();
        return new(views, rows.Count > most ? views[^1].Revision : null);
    }
}

/// <summary>History of a co-op.</summary>
public sealed partial class CoopView
{
    /// <summary>Changes, newest first, a page at a time; <paramref name="before"/> is the lowest number known.</summary>
    public ChangePage ChangePage(int first = 50, int? before = null)
    {
        var most = Math.Clamp(first, 1, MostAPage);
        var rows = register.History.Changes(register.Viewer, register.Coop.Id, most + 1, before);
        return new(rows.Take(most).Select(c => new ChangeView(c.Id, (int)c.Seq, c.AtUtc, c.Said, c.UndoesId is not null, (int)c.ItemCount)).ToList(), rows.Count > most ? (int)rows[most - 1].Seq : null);
    }
}
