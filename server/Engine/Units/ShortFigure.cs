using System.Globalization;

namespace FarmPortfolio.Engine.Units;

/// <summary>Figures of messages. One too large to be read as digits, which a slip of the keys can make three hundred long, is told by its power of ten.</summary>
public static class ShortFigure
{
    private const double Longest = 1e15;

    /// <summary>The figure as words.</summary>
    /// <param name="value">The figure.</param>
    /// <param name="format">How an ordinary one is written, such as <c>#,0.##</c>.</param>
    /// <returns>Words, the same for every culture.</returns>
    public static string Of(double value, string format) =>
        value.ToString(Math.Abs(value) < Longest ? format : "0.##E+0", CultureInfo.InvariantCulture);
}
