using System.Globalization;
using System.Text;

namespace FarmPortfolio.Published.Heat;

/// <summary>The rows of the semicircle house as a table for the docs: what the independent script says, what the engine says, and what it says with days shaped as in the script.</summary>
internal static class ChecksTable
{
    private static readonly (string Name, string Place, string Plan)[] Cases = [("north, Nov to Apr", "north", "winter-long"), ("north, Feb to May", "north", "spring"), ("New York, Nov to Apr", "nyc", "winter-long"), ("New York, Feb to May", "nyc", "spring")];

    private static readonly (string Title, string Parts, double AirChanges, double AirFactor, double?[] Expected)[] Rows =
    [
        ("foam", "foam", 1, 1, [36, 36, 39, 39]), ("curtain", "curtain", 1, 1, [25, 25, 27, 27]), ("blanket", "blanket", 1, 1, [18, 18, 19, null]), ("film that holds heat", "irfilm", 1, 1, [15, 16, 15, null]),
        ("sealing, 1.5 to 1.0", "seal", 1.5, 1 / 1.5, [7.5, 7.8, 7.7, null]), ("sealing, 1.0 to 0.6", "seal", 1, 0.6, [6.4, 6.7, 6.6, null]), ("knee walls", "kneewall", 1, 1, [9, 10, 10, null]),
        ("end walls", "endwalls", 1, 1, [9, 9, 9, null]), ("edge", "perimeter", 1, 1, [2.7, 2.8, 2.7, null]), ("second film", "secondfilm", 1.5, 1, [41, 42, 42, null]),
        ("foam, sealing", "foam+seal", 1, 0.6, [43, null, null, null]), ("foam, end walls, edge", "foam+endwalls+perimeter", 1, 1, [48, null, null, null]), ("foam, film", "foam+irfilm", 1, 1, [45, null, null, null]),
        ("foam, curtain", "foam+curtain", 1, 1, [44, null, null, null]), ("foam, sealing, end walls, edge", "foam+seal+endwalls+perimeter", 1, 0.6, [54, null, null, null]),
        ("curtain, sealing", "curtain+seal", 1, 0.6, [30, null, null, null]), ("curtain, film", "curtain+irfilm", 1, 1, [36, null, null, null]),
        ("curtain, film, sealing, knee, end walls, edge", "curtain+irfilm+seal+kneewall+endwalls+perimeter", 1, 0.6, [55, null, null, null]),
    ];

    private static readonly double[] HeatMmbtu = [499, 230, 291, 122];

    public static string Markdown()
    {
        var text = new StringBuilder();
        text.Append("| row, place | script | engine | engine, script's days |\n|---|---|---|---|\n");
        for (var i = 0; i < Cases.Length; i++)
        {
            Line(text, $"heat, MMBtu; {Cases[i].Name}", HeatMmbtu[i], "0", cosine => House(i, cosine, 1, null).HeatMmbtu());
        }

        foreach (var row in Rows)
        {
            for (var i = 0; i < Cases.Length; i++)
            {
                if (row.Expected[i] is { } expected)
                {
                    var at = i;
                    Line(text, $"{row.Title}, %; {Cases[i].Name}", expected, "0.0", cosine => House(at, cosine, row.AirChanges, row.Parts).With(row.Parts, ("seal.airFactor", row.AirFactor)).SavingPct());
                }
            }
        }

        return text.ToString();
    }

    private static SemicircleHouse House(int i, bool cosine, double airChanges, string? parts) =>
        new() { Place = Cases[i].Place, Plan = Cases[i].Plan, Cosine = cosine, AirChanges = airChanges, Covering = parts == "secondfilm" ? "singlefilm" : "doublefilm" };

    private static void Line(StringBuilder text, string what, double expected, string format, Func<bool, double> reckon)
    {
        string Say(double v) => v.ToString(format, CultureInfo.InvariantCulture);
        text.Append("| ").Append(what).Append(" | ").Append(Say(expected)).Append(" | ").Append(Say(reckon(false))).Append(" | ").Append(Say(reckon(true))).Append(" |\n");
    }
}
