using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Studies;

/// <summary>An input that differs.</summary>
/// <param name="ItemId">Item.</param>
/// <param name="Kind">Kind.</param>
/// <param name="Name">What it is called among all farms.</param>
/// <param name="State">changed, added or taken away.</param>
/// <param name="Fields">Fields of the facts that differ.</param>
public sealed record InputChange(string ItemId, string Kind, string Name, string State, IReadOnlyList<FieldDifference> Fields);

/// <summary>What of a study's inputs differs from now, or from another study's; only what a study really reads counts.</summary>
/// <param name="inputs">Texts.</param>
/// <param name="studies">Studies.</param>
public sealed class StudyChanges(StudyInputStore inputs, StudyStore studies)
{
    /// <summary>What changed since a study froze its inputs.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="study">Study.</param>
    /// <returns>Differences; none = the study is up to date.</returns>
    public IReadOnlyList<InputChange> Since(Viewer viewer, StudyRow study) =>
        studies.ChangedSince(viewer, study).Count == 0 ? [] : Differences(inputs.Frozen(viewer, study), inputs.Now(viewer, study.CoopId));

    /// <summary>What differs between the inputs of two studies.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="left">A study.</param>
    /// <param name="right">Another.</param>
    /// <returns>Differences.</returns>
    public IReadOnlyList<InputChange> Between(Viewer viewer, StudyRow left, StudyRow right) => Differences(inputs.Frozen(viewer, left), inputs.Frozen(viewer, right));

    private static bool ForRoundsAlone(string before, string after)
    {
        static string Read(string text) => CanonicalJson.Write(CanonicalJson.Read<FarmFacts>(text).ForStudies());
        return Read(before) == Read(after);
    }

    private static List<InputChange> Differences(IReadOnlyList<InputText> left, IReadOnlyList<InputText> right)
    {
        var (before, after) = (left.ToDictionary(i => i.ItemId), right.ToDictionary(i => i.ItemId));
        var moved = before.Keys.Union(after.Keys).Where(id => before.GetValueOrDefault(id)?.Sha256 != after.GetValueOrDefault(id)?.Sha256).ToList();
        if (moved.Count == 0)
        {
            return [];
        }

        var read = StudyReads.Of(left);
        read.UnionWith(StudyReads.Of(right));
        var names = new InputNames(left.Concat(right));
        return [.. moved.Where(id => read.Contains(id) && !(before.GetValueOrDefault(id) is { Kind: ItemKind.Farm } b && after.GetValueOrDefault(id) is { } a && ForRoundsAlone(b.Facts, a.Facts))).Select(id =>
        {
            var (b, a) = (before.GetValueOrDefault(id), after.GetValueOrDefault(id));
            return new InputChange(id, (a ?? b)!.Kind, names.Of((a ?? b)!), b is null ? "added" : a is null ? "taken away" : "changed",
                b is null || a is null ? [] : FieldDifferences.Of(b.Facts, null, a.Facts, null));
        }).OrderBy(c => c.Kind, StringComparer.Ordinal).ThenBy(c => c.Name, StringComparer.Ordinal).ThenBy(c => c.ItemId, StringComparer.Ordinal)];
    }
}
