namespace FarmPortfolio.Host.Loading;

/// <summary>A cell of a head: a name in plain words and the unit beside it, "Side-wall height (ft)" = "side wall height" in "ft".</summary>
/// <param name="Name">Name, small letters, single blanks.</param>
/// <param name="Unit">Unit as written; null = none told.</param>
internal readonly record struct HeadCell(string Name, string? Unit)
{
    private static readonly char[] Openers = ['(', '[', ','];

    /// <summary>Reads a head's cell. What stands in brackets or after a comma is the unit; a last word is one when it is in the list.</summary>
    /// <param name="cell">Cell.</param>
    /// <param name="isUnit">Whether a last word is a unit.</param>
    /// <returns>Name and unit.</returns>
    internal static HeadCell Of(string cell, Func<string, bool> isUnit)
    {
        var open = cell.IndexOfAny(Openers);
        if (open > 0)
        {
            var unit = cell[(open + 1)..].Trim(')', ']', ' ');
            return new(Plain(cell[..open]), unit.Length > 0 ? unit : null);
        }

        var name = Plain(cell);
        var last = name.LastIndexOf(' ');
        return last > 0 && isUnit(name[(last + 1)..]) ? new(name[..last], name[(last + 1)..]) : new(name, null);
    }

    /// <summary>Small letters and single blanks; underscores, hyphens and dots are blanks.</summary>
    /// <param name="text">Text.</param>
    /// <returns>Plain text.</returns>
    internal static string Plain(string text) =>
        string.Join(' ', text.ToLowerInvariant().Split([' ', '_', '-', '.', '\t', '\u00A0', '\uFEFF'], StringSplitOptions.RemoveEmptyEntries));
}
