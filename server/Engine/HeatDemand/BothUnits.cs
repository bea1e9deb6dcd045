using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>Figures of a message in SI and, behind it, in US units: who typed feet finds his own figure again.</summary>
internal static class BothUnits
{
    /// <summary>A length, as "2 m (6.6 ft)".</summary>
    /// <param name="m">Metres.</param>
    /// <returns>Words.</returns>
    public static string Length(double m) => FormattableString.Invariant($"{ShortFigure.Of(m, "#,0.##")} m ({Short(m / Us.FootM)} ft)");

    /// <summary>A span of lengths, as "2 to 400 m (6.6 to 1,312 ft)".</summary>
    /// <param name="lowM">Least, metres.</param>
    /// <param name="highM">Most, metres.</param>
    /// <returns>Words.</returns>
    public static string Lengths(double lowM, double highM) => Span(lowM, highM, Us.FootM, "m", "ft");

    /// <summary>A power, as "3.5 W (12 Btu/h)" or "29.3 kW (100,000 Btu/h)".</summary>
    /// <param name="kw">Kilowatts.</param>
    /// <returns>Words.</returns>
    public static string Power(double kw) => FormattableString.Invariant($"{(Math.Abs(kw) < 0.1 ? $"{1000 * kw:0.##} W" : $"{ShortFigure.Of(kw, "#,0.##")} kW")} ({ShortFigure.Of(kw / Us.BtuKwh, "#,0")} Btu/h)");

    /// <summary>A figure in both units.</summary>
    /// <param name="value">The figure, SI.</param>
    /// <param name="siPerUs">SI units in a US unit; null = it has one unit.</param>
    /// <param name="si">Words of the SI unit.</param>
    /// <param name="us">Words of the US unit.</param>
    /// <returns>Words.</returns>
    public static string Figure(double value, double? siPerUs, string si, string us) =>
        FormattableString.Invariant($"{ShortFigure.Of(value, "#,0.###")} {si}{(siPerUs is { } per ? $" ({Short(value / per)} {us})" : string.Empty)}").TrimEnd();

    /// <summary>A span in both units.</summary>
    /// <param name="low">Least, SI.</param>
    /// <param name="high">Most, SI.</param>
    /// <param name="siPerUs">SI units in a US unit; null = it has one unit.</param>
    /// <param name="si">Words of the SI unit.</param>
    /// <param name="us">Words of the US unit.</param>
    /// <returns>Words.</returns>
    public static string Span(double low, double high, double? siPerUs, string si, string us) =>
        FormattableString.Invariant($"{low:#,0.##} to {high:#,0.##} {si}{(siPerUs is { } per ? $" ({Short(low / per)} to {Short(high / per)} {us})" : string.Empty)}").TrimEnd();

    private static string Short(double value) => ShortFigure.Of(value, Math.Abs(value) < 1 ? "0.##" : Math.Abs(value) < 100 ? "0.#" : "#,0");
}
