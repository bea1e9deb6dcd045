using FarmPortfolio.Engine.Trials;

namespace FarmPortfolio.Host.Loading;

/// <summary>Temperatures of a notebook held against what can be; one that cannot counts as missing, and is named with its line and column. Bounds within a house are common practice, no source.</summary>
/// <param name="unit">Unit of the file.</param>
/// <param name="faults">Where to say what cannot be.</param>
internal sealed class NotebookRanges(string unit, FaultList faults)
{
    private const double ColdestInsideC = -30;
    private const double HottestInsideC = 60;
    private const double ColdestOutsideC = -60;
    private const double HottestOutsideC = 57;
    private const double LeastSetC = -5;
    private const double MostSetC = 45;

    /// <summary>A line in SI.</summary>
    /// <param name="house">House as the notebook names it.</param>
    /// <param name="line">Line.</param>
    /// <returns>The reading.</returns>
    public TrialReading Reading(string house, NotebookLine line) => new(
        line.House, line.At, line.Value,
        Within(new(house, "inside", "an inside temperature"), line.Inside, ColdestInsideC, HottestInsideC, line.Line, line.Columns.Inside),
        Within(new(house, "outside", "an outside temperature"), line.Outside, ColdestOutsideC, HottestOutsideC, line.Line, line.Columns.Outside),
        Within(new(house, "setPoint", "a set point"), line.SetPoint, LeastSetC, MostSetC, line.Line, line.Columns.SetPoint),
        line.State);

    private double Within(TrialCell cell, double written, double lowC, double highC, int line, int column)
    {
        var c = TemperatureUnits.ToC(written, unit);
        if (double.IsNaN(c) || (c >= lowC && c <= highC))
        {
            return c;
        }

        faults.Add("OUT_OF_RANGE", cell.Field, FormattableString.Invariant($"House {cell.House}: {cell.Words} of {written:#,0.##} {unit} cannot be."),
            $"Give {TemperatureUnits.Both(lowC)} to {TemperatureUnits.Both(highC)}; check the value and the unit. The temperature counts as missing.", line, column);
        return double.NaN;
    }

    private readonly record struct TrialCell(string House, string Field, string Words);
}
