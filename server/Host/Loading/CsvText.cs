using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;

namespace FarmPortfolio.Host.Loading;

/// <summary>Rows of a CSV text with their line numbers; a byte-order mark, CRLF and quotes are taken, comma, semicolon and tab are told apart.</summary>
internal static class CsvText
{
    /// <summary>Largest text without a head that is looked at.</summary>
    public const int HeadBytes = 64 * 1024;

    internal static IEnumerable<(int Line, string[] Cells)> Rows(TextReader text)
    {
        var configuration = new CsvConfiguration(CultureInfo.InvariantCulture)
        {
            HasHeaderRecord = false,
            DetectDelimiter = true,
            DetectDelimiterValues = [",", ";", "\t"],
            BadDataFound = null,
            MissingFieldFound = null,
            IgnoreBlankLines = true,
            TrimOptions = TrimOptions.Trim,
            MaxFieldSize = HeadBytes,
        };
        using var csv = new CsvParser(text, configuration);
        while (csv.Read())
        {
            yield return (csv.RawRow, [.. csv.Record!.Select(c => c.Trim('\uFEFF', ' '))]);
        }
    }

    internal static int Find(string[] head, params string[] names) =>
        Array.FindIndex(head, h => names.Any(n => string.Equals(h.Replace(" ", string.Empty, StringComparison.Ordinal).Replace("_", string.Empty, StringComparison.Ordinal), n, StringComparison.OrdinalIgnoreCase)));
}
