using System.Globalization;
using FarmPortfolio.Engine.Retrofits;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>What a study found for one option; the option is null where its house or itself has been taken away since.</summary>
[Name("StudyOption")]
public sealed record StudyOptionView([property: Id] string OptionId, OptionView? Option, OptionResultView Result);

/// <summary>A page of a study's options.</summary>
[Name("StudyOptionPage")]
public sealed record StudyOptionPage(IEnumerable<StudyOptionView> Items, string? Next, int Total);

/// <summary>What a study found, option by option.</summary>
public sealed partial class StudyView
{
    private const int MostOptionsAPage = 200;

    /// <summary>Options of the study, of one farm where one is told: those worth most over the horizon in the middle future first. The cursor holds the last one's worth and identifier.</summary>
    /// <exception cref="ExecutionError">The cursor is none of this list's.</exception>
    public StudyOptionPage Options(int first = 50, string? after = null, [Id] string? farmId = null)
    {
        if (result.Value is not { } found)
        {
            return new([], null, 0);
        }

        var (total, page) = register.Studies.Options(register.Viewer, row, Math.Clamp(first, 1, MostOptionsAPage), Cursor(after), farmId);
        var by = found.Options.ToDictionary(o => $"{o.HouseId}~{o.Key}");
        var next = page.More ? $"{page.Rows[^1].WorthUsd.ToString("R", CultureInfo.InvariantCulture)}\n{page.Rows[^1].OptionId}" : null;
        return new(page.Rows.Select(r => new StudyOptionView(r.OptionId, Option(r.HouseId, r.Key), new(by[r.OptionId], found.DiscountRate))), next, total);
    }

    private OptionView? Option(string houseId, string key) => !register.Houses.TryGetValue(houseId, out var house) ? null
        : key == "none" ? new(register, house, new OptionFacts("none", []))
        : register.OptionSet(houseId)?.Facts.Options.FirstOrDefault(o => o.Key == key) is { } facts ? new(register, house, facts) : null;

    private static (double WorthUsd, string OptionId)? Cursor(string? after)
    {
        if (after is null)
        {
            return null;
        }

        var at = after.IndexOf('\n', StringComparison.Ordinal);
        return at > 0 && double.TryParse(after[..at], NumberStyles.Float, CultureInfo.InvariantCulture, out var worth) && double.IsFinite(worth)
            ? (worth, after[(at + 1)..])
            : throw new ExecutionError("\"after\" is no place in this list. Give what \"next\" of the page before said, or nothing for the first page.") { Code = AskedRange.BadInput, Extensions = new Dictionary<string, object?> { ["field"] = "after" } };
    }
}
