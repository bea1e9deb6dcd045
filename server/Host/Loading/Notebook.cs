using FarmPortfolio.Engine.Trials;

namespace FarmPortfolio.Host.Loading;

/// <summary>A house of a trial notebook.</summary>
/// <param name="Label">Name in the notebook.</param>
/// <param name="Measure">What is read on it.</param>
/// <param name="Unit">Unit as written; null = not told.</param>
/// <param name="Readings">How many readings.</param>
/// <param name="EverInUse">Whether its retrofit is ever in use or broken: the control's is not.</param>
public sealed record NotebookHouse(string Label, TrialMeasure Measure, string? Unit, int Readings, bool EverInUse);

/// <summary>What a trial notebook holds.</summary>
/// <param name="Layout">Layout in words.</param>
/// <param name="Houses">Houses in the order met.</param>
/// <param name="Readings">Readings of all houses, each house's in order of time.</param>
public sealed record Notebook(string Layout, IReadOnlyList<NotebookHouse> Houses, IReadOnlyList<TrialReading> Readings);

/// <summary>A line of the notebook as it stands, before units are known.</summary>
/// <param name="House">Index of the house.</param>
/// <param name="At">Time.</param>
/// <param name="Value">Reading.</param>
/// <param name="Inside">Inside temperature as written.</param>
/// <param name="Outside">Outside temperature as written.</param>
/// <param name="SetPoint">Set point as written.</param>
/// <param name="State">State.</param>
/// <param name="Line">Line.</param>
/// <param name="Columns">Columns of inside and outside temperature and of the set point, from 1.</param>
internal sealed record NotebookLine(int House, DateTime At, double Value, double Inside, double Outside, double SetPoint, RetrofitState State, int Line, (int Inside, int Outside, int SetPoint) Columns);
