using System.Globalization;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.HeatDemand.Calibration;

/// <summary>A line in kWh, ready for the rules.</summary>
internal sealed record FuelLine(int No, FuelEntry Entry, double Kwh, double SdKwh);

/// <summary>Lines of one record on their way through the rules: their fuel, their fate, what is asked.</summary>
internal sealed class EntryLines
{
    /// <summary>Therms a hundred cubic feet where a bill tells none and no heating values are chosen: 1.026 MMBtu per 1,000 cubic feet, 40 CFR 98 table NN-1.</summary>
    internal const double PublishedThermsPerCcf = 1.026;

    private readonly EntryState[] states;

    /// <summary>Reads the lines of a record.</summary>
    /// <param name="group">Tank or meter.</param>
    /// <param name="record">Record.</param>
    /// <param name="values">Heating values; null = those in use where nothing is chosen.</param>
    public EntryLines(SupplyGroupFacts group, FuelRecordFacts record, HeatingValueSet? values = null)
    {
        (Group, Record, Heating) = (group, record, values ?? FuelSets.HeatingInUse);
        states = [.. record.Entries.Select((_, i) => new EntryState(i, EntryUse.Used, null, 0))];
        var price = MiddlePriceUsdPerKwh();
        for (var i = 0; i < record.Entries.Count; i++)
        {
            if (EntryChecks.Of(this, i, price) is { } line)
            {
                Sound.Add(line);
                states[i] = states[i] with { KwhFuel = line.Kwh };
            }
        }
    }

    /// <summary>Tank or meter.</summary>
    public SupplyGroupFacts Group { get; }

    /// <summary>Record.</summary>
    public FuelRecordFacts Record { get; }

    /// <summary>Heating values that quantities are turned into kWh by.</summary>
    public HeatingValueSet Heating { get; }

    /// <summary>Lines that can be used, in the record's order.</summary>
    public List<FuelLine> Sound { get; } = [];

    /// <summary>Days on which a held line leaves a hole: an interval over one of them is not used.</summary>
    public List<(DateOnly On, int No)> Holes { get; } = [];

    /// <summary>What became of each line.</summary>
    public IReadOnlyList<EntryState> States => states;

    /// <summary>Questions and remarks.</summary>
    public List<EntryFault> Faults { get; } = [];

    /// <summary>What was assumed for the whole record.</summary>
    public List<string> Notes { get; } = [];

    /// <summary>Sets a line's fate.</summary>
    public void Set(int no, EntryUse use, string? why) => states[no] = states[no] with { Use = use, Why = why };

    /// <summary>Asks about a line and holds it until it is answered.</summary>
    public void Hold(int no, string code, string field, string message, string remedy)
    {
        Faults.Add(new(no, new(code, field, message, remedy, Line: no + 1), true));
        Set(no, EntryUse.Held, message);
        Holes.Add((Record.Entries[no].ToOn, no));
    }

    /// <summary>Remarks on a line that is used all the same.</summary>
    public void Ask(int no, string code, string field, string message, string remedy) => Faults.Add(new(no, new(code, field, message, remedy, Line: no + 1), false));

    /// <summary>kWh in a unit of a line; null where the fuel is not sold in it.</summary>
    public double? KwhPerUnit(FuelEntry entry)
    {
        var factor = entry.ThermsPerCcf ?? Group.ThermsPerCcf;
        if (factor is null && Group.Fuel == FuelKind.NaturalGas && entry.Unit is "ccf" or "mcf" or "m3")
        {
            var chosen = Heating != FuelSets.HeatingInUse;
            factor = chosen ? Heating.GasBtuPerCubicFoot / 1000 : PublishedThermsPerCcf;
            var note = string.Create(CultureInfo.InvariantCulture, $"Some bills give volume without a therm factor: {factor:0.000} therms a Ccf is taken ({(chosen ? $"{Heating.Name}, chosen in the assumptions" : "40 CFR 98, table NN-1")}). The factor stands on the bill and changes monthly.");
            if (!Notes.Contains(note))
            {
                Notes.Add(note);
            }

        }

        return HeatingValues.KwhPerUnit(Group.Fuel, entry.Unit, Heating, factor);
    }

    /// <summary>Litres of a tank's fuel in so many kWh.</summary>
    public double Litres(double kwh) => kwh / (HeatingValues.KwhPerUnit(Group.Fuel, "L", Heating) ?? HeatingValues.KwhPerUnit(FuelKind.Propane, "L", Heating)!.Value);

    /// <summary>A figure as people write it.</summary>
    internal static string Figure(double value) => value.ToString("#,0.##", CultureInfo.InvariantCulture);

    /// <summary>A day as people write it everywhere alike.</summary>
    internal static string Day(DateOnly day) => day.ToString("d MMM yyyy", CultureInfo.InvariantCulture);

    private double? MiddlePriceUsdPerKwh()
    {
        var prices = Record.Entries.Where(e => e is { OnlyDollars: false, TotalCents: > 0, Quantity: > 0, Held: null })
            .Select(e => (Cents: e.TotalCents!.Value - (e.FeesCents ?? 0), Kwh: e.Quantity * (KwhPerUnit(e) ?? 0))).Where(p => p.Kwh > 0).Select(p => p.Cents / 100.0 / p.Kwh).Order().ToList();
        return prices.Count > 0 ? prices[prices.Count / 2] : null;
    }
}
