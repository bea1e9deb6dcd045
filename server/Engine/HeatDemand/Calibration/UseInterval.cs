namespace FarmPortfolio.Engine.HeatDemand.Calibration;

/// <summary>Fuel burned over whole days, as tickets or bills tell it.</summary>
/// <param name="FromOn">First day.</param>
/// <param name="ToOn">Last day.</param>
/// <param name="KwhFuel">Fuel burned, kWh on the higher heating value.</param>
/// <param name="SdKwh">Standard deviation of what was not read: levels of a tank, a quantity reckoned from money; 0 = read.</param>
/// <param name="Metered">Whether both ends are readings; false = a total.</param>
/// <param name="EntryNos">Lines of the record it is made of, from 0.</param>
/// <param name="Note">What was done to get it; null = nothing.</param>
public sealed record UseInterval(DateOnly FromOn, DateOnly ToOn, double KwhFuel, double SdKwh, bool Metered, IReadOnlyList<int> EntryNos, string? Note = null)
{
    /// <summary>Days, at least 1.</summary>
    public int Days => ToOn.DayNumber - FromOn.DayNumber + 1;
}

/// <summary>What became of a line of a fuel record.</summary>
public enum EntryUse
{
    /// <summary>Counts in an interval.</summary>
    Used,

    /// <summary>First known level of the tank: it opens the account and counts in no interval.</summary>
    Opens,

    /// <summary>Counts when what follows comes in: a full fill, an actual read, an answer.</summary>
    Waiting,

    /// <summary>Replaced by a newer bill, or netted by a credit note.</summary>
    Replaced,

    /// <summary>Held until its question is answered, or taken out by the user.</summary>
    Held,
}

/// <summary>A line's fate and the reason.</summary>
/// <param name="No">Line of the record, from 0.</param>
/// <param name="Use">What became of it.</param>
/// <param name="Why">Reason in a sentence; null where it simply counts.</param>
/// <param name="KwhFuel">Its fuel in kWh as taken; 0 where it could not be told.</param>
public sealed record EntryState(int No, EntryUse Use, string? Why, double KwhFuel);

/// <summary>A question about a line, or a remark on it.</summary>
/// <param name="No">Line of the record, from 0.</param>
/// <param name="Fault">What is asked.</param>
/// <param name="Holds">Whether the line is held until it is answered.</param>
public sealed record EntryFault(int No, Fault Fault, bool Holds);

/// <summary>A fuel record turned into intervals of use.</summary>
/// <param name="Intervals">Intervals, oldest first, none overlapping.</param>
/// <param name="Entries">One for each line of the record, in its order.</param>
/// <param name="Faults">Questions and remarks.</param>
/// <param name="Notes">What was assumed for the whole record.</param>
public sealed record FuelUse(IReadOnlyList<UseInterval> Intervals, IReadOnlyList<EntryState> Entries, IReadOnlyList<EntryFault> Faults, IReadOnlyList<string> Notes);
