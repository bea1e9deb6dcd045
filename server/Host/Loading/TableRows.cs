using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;

namespace FarmPortfolio.Host.Loading;

/// <summary>Rows of a CSV text with their line numbers; CRLF and quotes are taken, comma, semicolon and tab are told apart.</summary>
internal static class TableRows
{
    internal static IEnumerable<(int Line, string[] Cells)> Of(SourceText text, FaultList faults)
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
            MaxFieldSize = SourceText.HeadChars,
        };
        using var csv = new CsvParser(text, configuration, leaveOpen: true);
        while (Read(csv, faults))
        {
            yield return (csv.RawRow, csv.Record!);
        }

        if (text.Garbled is { } garbled)
        {
            faults.Add(garbled);
        }

        if (text.Refusal is { } refusal)
        {
            faults.Add(refusal);
        }
    }

    private static bool Read(CsvParser csv, FaultList faults)
    {
        var line = csv.RawRow + 1;
        try
        {
            return csv.Read();
        }
        catch (MaxFieldSizeException)
        {
            faults.Add("OPEN_QUOTE", null, $"A quotation mark opened at line {line} or soon after is never closed.", "Close it, or take it out; the rows before it were read.", line, 1);
            return false;
        }
    }
}
