using System.Data.Common;
using Dapper;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Storage.Kinds;

/// <summary>What becomes of an item when the one it points at is deleted.</summary>
internal enum Bond
{
    /// <summary>It goes with it: the houses of a farm.</summary>
    GoesWith,

    /// <summary>It keeps it from being deleted: a farm its weather station.</summary>
    Holds,
}

/// <summary>A column by which items of this kind point at others.</summary>
/// <param name="Column">Column that holds the other's identifier.</param>
/// <param name="Target">Kind of the other.</param>
/// <param name="Bond">What becomes of this one.</param>
/// <param name="Table">Table of the column; null = the kind's own.</param>
/// <param name="IdColumn">Column with this item's identifier.</param>
internal sealed record Link(string Column, string Target, Bond Bond, string? Table = null, string IdColumn = "id");

/// <summary>An identifier that an item's text names.</summary>
/// <param name="Field">Field of the facts.</param>
/// <param name="Kind">Kind it must be.</param>
/// <param name="Id">Identifier.</param>
internal sealed record Reference(string Field, string Kind, string Id);

/// <summary>Columns that no two live items of a kind may share within a co-op.</summary>
/// <param name="Columns">Columns.</param>
/// <param name="Code">Code of the fault.</param>
/// <param name="Field">Field of the fault.</param>
/// <param name="Message">What is wrong; {0} is the item's name.</param>
/// <param name="Remedy">What would be right.</param>
internal sealed record Unique(string[] Columns, string Code, string Field, string Message, string Remedy)
{
    /// <summary>Names are unique among siblings.</summary>
    internal static Unique Name(params string[] among) =>
        new(["name_key", .. among], "NAME_TAKEN", "name", "The name \"{0}\" is taken.", "Choose another name.");
}

/// <summary>The query columns of a kind of item, written from its text in the transaction that saves it.</summary>
internal abstract class KindTable
{
    /// <summary>Kind, and name of its table.</summary>
    public abstract string Kind { get; }

    /// <summary>Prefix of its identifiers.</summary>
    public abstract string Prefix { get; }

    /// <summary>Whether a study reads it, so that a change of it puts studies out of date.</summary>
    public virtual bool Studied => true;

    /// <summary>Why its items are never deleted; null = they may be.</summary>
    public virtual string? NeverDeleted => null;

    /// <summary>Whether one item is held by <see cref="NeverDeleted"/>.</summary>
    /// <param name="db">Connection.</param>
    /// <param name="transaction">Transaction.</param>
    /// <param name="id">Item.</param>
    /// <returns>True where it may not go.</returns>
    public virtual bool IsKept(DbConnection db, DbTransaction transaction, string id) => NeverDeleted is not null;

    /// <summary>What its items point at.</summary>
    public virtual IReadOnlyList<Link> Links => [];

    /// <summary>What must be unique.</summary>
    public virtual IReadOnlyList<Unique> Uniques => [];

    /// <summary>Columns beside id, coop_id and live.</summary>
    /// <param name="facts">Facts.</param>
    /// <param name="remarks">Remarks.</param>
    /// <returns>Names and values.</returns>
    public abstract IReadOnlyDictionary<string, object?> Columns(string facts, Remarks remarks);

    /// <summary>Identifiers that the facts name.</summary>
    /// <param name="facts">Facts.</param>
    /// <returns>References.</returns>
    public abstract IEnumerable<Reference> References(string facts);

    /// <summary>Hashes of the blobs that the facts name.</summary>
    /// <param name="facts">Facts.</param>
    /// <returns>Hashes.</returns>
    public virtual IEnumerable<string> Blobs(string facts) => [];

    /// <summary>Writes rows of the kind beside its own table.</summary>
    /// <param name="db">Connection.</param>
    /// <param name="transaction">Transaction.</param>
    /// <param name="id">Item.</param>
    /// <param name="facts">Facts; null = the item is deleted and has no such rows.</param>
    public virtual void WriteParts(DbConnection db, DbTransaction transaction, string id, string? facts)
    {
    }

    /// <summary>Writes the item's row.</summary>
    /// <param name="db">Connection.</param>
    /// <param name="transaction">Transaction.</param>
    /// <param name="coopId">Co-op.</param>
    /// <param name="id">Item.</param>
    /// <param name="live">Whether it is not deleted.</param>
    /// <param name="columns">Columns.</param>
    public void WriteRow(DbConnection db, DbTransaction transaction, string coopId, string id, bool live, IReadOnlyDictionary<string, object?> columns)
    {
        var names = columns.Keys.ToList();
        var parameters = new DynamicParameters(new { id, coopId, live = live ? 1L : 0L });
        foreach (var (name, value) in columns)
        {
            parameters.Add(name, value);
        }

        db.Execute(
            $"INSERT INTO {Kind} (id, coop_id, live{string.Concat(names.Select(n => ", " + n))}) VALUES (@id, @coopId, @live{string.Concat(names.Select(n => ", @" + n))}) " +
            $"ON CONFLICT (id) DO UPDATE SET live = @live{string.Concat(names.Select(n => $", {n} = @{n}"))}", parameters, transaction);
    }

    /// <summary>The first rule of uniqueness that a live row would break.</summary>
    /// <param name="db">Connection.</param>
    /// <param name="transaction">Transaction.</param>
    /// <param name="coopId">Co-op.</param>
    /// <param name="id">Item.</param>
    /// <param name="columns">Columns.</param>
    /// <returns>The rule; null = none.</returns>
    public Unique? Broken(DbConnection db, DbTransaction transaction, string coopId, string id, IReadOnlyDictionary<string, object?> columns) => Uniques.FirstOrDefault(u =>
    {
        var parameters = new DynamicParameters(new { id, coopId });
        foreach (var name in u.Columns)
        {
            parameters.Add(name, columns[name]);
        }

        return db.QueryFirstOrDefault<string>(
            $"SELECT id FROM {Kind} WHERE coop_id = @coopId AND live = 1 AND id <> @id{string.Concat(u.Columns.Select(c => $" AND {c} = @{c}"))}", parameters, transaction) is not null;
    });

    /// <summary>Names are compared trimmed and folded.</summary>
    /// <param name="name">Name.</param>
    /// <returns>Key.</returns>
    internal static string NameKey(string? name) =>
        string.Join(' ', (name ?? string.Empty).Normalize().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).ToLowerInvariant();
}

/// <summary>A kind whose facts are of one type.</summary>
/// <typeparam name="T">Facts.</typeparam>
/// <param name="kind">Kind.</param>
/// <param name="prefix">Prefix of identifiers.</param>
internal abstract class KindTable<T>(string kind, string prefix) : KindTable
{
    /// <inheritdoc/>
    public override string Kind => kind;

    /// <inheritdoc/>
    public override string Prefix => prefix;

    /// <inheritdoc/>
    public override IReadOnlyDictionary<string, object?> Columns(string facts, Remarks remarks) => Columns(CanonicalJson.Read<T>(facts), remarks);

    /// <inheritdoc/>
    public override IEnumerable<Reference> References(string facts) => References(CanonicalJson.Read<T>(facts));

    /// <summary>Columns beside id, coop_id and live.</summary>
    /// <param name="facts">Facts.</param>
    /// <param name="remarks">Remarks.</param>
    /// <returns>Names and values.</returns>
    protected abstract Dictionary<string, object?> Columns(T facts, Remarks remarks);

    /// <summary>Identifiers that the facts name.</summary>
    /// <param name="facts">Facts.</param>
    /// <returns>References.</returns>
    protected virtual IEnumerable<Reference> References(T facts) => [];

    /// <summary>The columns of a name.</summary>
    /// <param name="remarks">Remarks.</param>
    /// <returns>name and name_key.</returns>
    protected static Dictionary<string, object?> Named(Remarks remarks) => new() { ["name"] = remarks.Name ?? string.Empty, ["name_key"] = NameKey(remarks.Name) };

    /// <summary>A date as it is stored.</summary>
    /// <param name="date">Date.</param>
    /// <returns>ISO 8601.</returns>
    protected static string? Text(DateOnly? date) => date?.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
