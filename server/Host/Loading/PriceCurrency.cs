using System.Globalization;

namespace FarmPortfolio.Host.Loading;

/// <summary>The money a price is written in. Futures and results are in US dollars, so any other is refused by name.</summary>
internal static class PriceCurrency
{
    /// <summary>Code of the US dollar.</summary>
    internal const string Dollar = "USD";

    // longer marks first: C$ is not $
    private static readonly (string Mark, string Code)[] Marks =
    [
        ("US$", Dollar), ("C$", "CAD"), ("CA$", "CAD"), ("CAN$", "CAD"), ("A$", "AUD"), ("MX$", "MXN"), ("$", Dollar), ("€", "EUR"), ("£", "GBP"), ("¥", "JPY"),
        ("USD", Dollar), ("EUR", "EUR"), ("GBP", "GBP"), ("CAD", "CAD"), ("AUD", "AUD"), ("MXN", "MXN"), ("JPY", "JPY"), ("CHF", "CHF"), ("SEK", "SEK"), ("NOK", "NOK"), ("DKK", "DKK"), ("PLN", "PLN"),
    ];

    private static readonly (string Word, string Code)[] Words = [("canadian", "CAD"), ("australian", "AUD"), ("sterling", "GBP"), ("euro", "EUR"), ("euros", "EUR"), ("dollar", Dollar), ("dollars", Dollar)];

    /// <summary>A cell's number without its mark, and the money the mark means; null = no mark.</summary>
    internal static (string Number, string? Code) Split(string cell)
    {
        var text = cell.Trim();
        foreach (var (mark, code) in Marks)
        {
            if (text.StartsWith(mark, StringComparison.OrdinalIgnoreCase) && Follows(text[mark.Length..]))
            {
                return (text[mark.Length..].Trim(), code);
            }

            if (text.EndsWith(mark, StringComparison.OrdinalIgnoreCase) && text.Length > mark.Length && Follows(text[..^mark.Length]))
            {
                return (text[..^mark.Length].Trim(), code);
            }
        }

        return (text, null);
    }

    /// <summary>The money that words beside a price name; null where they name none.</summary>
    internal static string? Named(string? words)
    {
        var text = words ?? string.Empty;
        var parts = text.Split([' ', ',', ';', '/', '(', ')', '[', ']', ':', '.', '_', '-', '\t', '¢'], StringSplitOptions.RemoveEmptyEntries);
        return Words.FirstOrDefault(w => parts.Contains(w.Word, StringComparer.OrdinalIgnoreCase)).Code
            ?? Marks.FirstOrDefault(m => parts.Contains(m.Mark, StringComparer.OrdinalIgnoreCase)).Code;
    }

    private static bool Follows(string number) => double.TryParse(number.Trim(), NumberStyles.Float, CultureInfo.InvariantCulture, out _);
}
