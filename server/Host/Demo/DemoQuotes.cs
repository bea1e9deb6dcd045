using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Demo;

/// <summary>Invented quotes: a firm one, a budget figure, one that has run out, and one visit for two houses.</summary>
internal static class DemoQuotes
{
    /// <summary>The quotes.</summary>
    public static IEnumerable<ItemToSave> Items()
    {
        yield return Quote(0, new(2026, 5, 12), new(2027, 3, 31), QuoteFirmness.Firm, "an invented fitter", Line(0, 0, "foam", 4_150, "material"), Line(0, 0, "foam", 1_250, "labour"), Line(0, 0, "foam", 640, "electrical"));
        yield return Quote(3, new(2026, 4, 2), null, QuoteFirmness.Budget, "an invented greenhouse builder", Line(3, 0, "curtain", 7_900, "material"), Line(3, 0, "curtain", 2_600, "labour"), Line(3, 0, "curtain", 350, "freight"));
        yield return Quote(2, new(2025, 3, 20), new(2025, 12, 31), QuoteFirmness.Firm, "an invented greenhouse builder", Line(2, 0, "curtain", 13_600, "material"), Line(2, 0, "curtain", 450, "permits", eligible: false));
        yield return Quote(8, new(2026, 6, 9), new(2027, 6, 30), QuoteFirmness.Firm, "an invented greenhouse builder", Line(8, 0, "curtain", 10_200, "material"), Line(8, 1, "curtain", 10_200, "material"), Line(8, 0, "curtain", 400, "visit"), Line(8, 1, "curtain", 400, "visit"));
    }

    private static ItemToSave Quote(int farm, DateOnly on, DateOnly? until, QuoteFirmness firmness, string supplier, params QuoteLine[] lines) =>
        new(ItemKind.Quote, $"qu_demo{farm:00}", null, new QuoteFacts { FarmId = $"f_demo{farm:00}", QuotedOn = on, ValidUntilOn = until, Firmness = firmness, Lines = lines }, new(Supplier: supplier));

    private static QuoteLine Line(int farm, int house, string code, long dollars, string category, bool eligible = true) => new($"h_demo{farm:00}{house}", code, 100 * dollars, category, eligible);
}
