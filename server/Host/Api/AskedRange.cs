using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>Figures in a question: one out of range is refused by name, for an answer to another question would be taken for the answer to this one.</summary>
internal static class AskedRange
{
    /// <summary>Code of the error.</summary>
    public const string BadInput = "BAD_INPUT";

    /// <summary>The number of a season.</summary>
    /// <param name="field">Argument.</param>
    /// <param name="season">Season asked for, 0 = the first.</param>
    /// <param name="seasons">Seasons of the assumptions.</param>
    /// <returns>The season.</returns>
    /// <exception cref="ExecutionError">It lies outside them.</exception>
    public static int Season(string field, int season, int seasons) => (int)Of(field, season, 0, seasons - 1);

    /// <summary>A figure.</summary>
    /// <param name="field">Argument.</param>
    /// <param name="value">Figure asked for.</param>
    /// <param name="low">Least.</param>
    /// <param name="high">Most.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ExecutionError">It lies outside them.</exception>
    public static double Of(string field, double value, double low, double high) => value >= low && value <= high
        ? value
        : throw new ExecutionError(FormattableString.Invariant($"{field} {value:0.####} is outside {low:0.####} to {high:0.####}. Give {low:0.####} to {high:0.####}.")) { Code = BadInput, Extensions = new Dictionary<string, object?> { ["field"] = field } };
}
