using FarmPortfolio.Engine;

namespace FarmPortfolio.Host.Storage.Items;

/// <summary>What names and notes may hold: they stand in headings, letters and printed sheets, beside figures that a committee signs.</summary>
internal static class RemarkChecks
{
    /// <summary>Longest name, place, supplier or person, letters.</summary>
    public const int LongestName = 300;

    /// <summary>Longest note, letters.</summary>
    public const int LongestNote = 20_000;

    /// <summary>All that is wrong with remarks that a user typed.</summary>
    /// <param name="remarks">Remarks.</param>
    /// <returns>Faults; empty = usable.</returns>
    public static IEnumerable<Fault> Of(Remarks remarks)
    {
        var names = new List<(string Field, string? Text)> { ("name", remarks.Name), ("place", remarks.Place), ("supplier", remarks.Supplier) };
        names.AddRange((remarks.People ?? new Dictionary<string, string>()).Values.Select(n => ("people", (string?)n)));
        foreach (var (field, text) in names)
        {
            if (text?.Length > LongestName)
            {
                yield return new("TOO_LONG", field, $"\"{text[..20]}...\" has {text.Length:#,0} letters.", $"Give at most {LongestName}.");
            }
            else if (HiddenMark(field, text) is { } hidden)
            {
                yield return hidden;
            }
        }

        if (remarks.Note?.Length > LongestNote)
        {
            yield return new("TOO_LONG", "note", $"The note has {remarks.Note.Length:#,0} letters.", $"Give at most {LongestNote:#,0}.");
        }
    }

    /// <summary>Says that a text holds a mark that nobody sees; null where it does not.</summary>
    /// <param name="field">Field.</param>
    /// <param name="text">Text.</param>
    /// <returns>The fault.</returns>
    public static Fault? HiddenMark(string field, string? text) => text?.Where(Hidden).Select(c => (char?)c).FirstOrDefault() is { } mark
        ? new("HIDDEN_MARK", field, $"It holds the hidden mark U+{(int)mark:X4}, which breaks the line or turns the text around.", "Type it anew without that mark.")
        : null;

    // control characters, and the marks of Unicode that turn the direction of the text after them (UAX 9, embeddings, overrides and isolates)
    private static bool Hidden(char c) => char.IsControl(c) || c is (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069');
}
