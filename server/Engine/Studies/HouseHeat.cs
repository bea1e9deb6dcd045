using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;

namespace FarmPortfolio.Engine.Studies;

/// <summary>Heat of a house as it stands and with each option, over the pool of winters: all of a study that knows nothing of prices and paths.</summary>
internal sealed class HouseHeat
{
    /// <summary>Reckons the balances of a house.</summary>
    /// <param name="house">House.</param>
    /// <param name="options">Options wanted, in order.</param>
    public HouseHeat(StudyHouse house, IReadOnlyList<OptionFacts> options)
    {
        var built = options.Select(o => (Option: o, Built: house.Switches.GetValueOrDefault(o.Key)?.Fault is { } wrong ? (Model: (OptionModel?)null, Faults: (IReadOnlyList<Fault>)[wrong]) : OptionModels.Of(house.Model, o))).ToList();
        LeftOut = [.. built.SelectMany(b => b.Built.Faults.Select(f => ($"{house.Id}~{b.Option.Key}", f)))];
        Options = [.. built.Where(b => b.Built.Model is not null).Select(b => b.Option)];
        Models = [OptionModels.AsItStands(house.Model), .. built.Where(b => b.Built.Model is not null).Select(b => b.Built.Model!)];
        Tables = DemandTables.Of(Models, house.Pool);
        Months = LaneTables.HeatedMonths(Tables);
        Alone = new(house);
        Air = AirCurves.Of(house, Options, Models);
        foreach (var code in Options.Where(o => o.Parts.Count > 1).SelectMany(o => o.Parts))
        {
            Alone.KwhOf(code);
        }
    }

    /// <summary>Options left out, and why.</summary>
    public IReadOnlyList<(string ItemId, Fault Fault)> LeftOut { get; }

    /// <summary>Options that fit the house, in order.</summary>
    public OptionFacts[] Options { get; }

    /// <summary>As it stands, then the options.</summary>
    public OptionModel[] Models { get; }

    /// <summary>Demand as it stands, then with the options.</summary>
    public DemandTable[] Tables { get; }

    /// <summary>Months in which any of them needs heat, July = 0, rising.</summary>
    public int[] Months { get; }

    /// <summary>What single retrofits save.</summary>
    public PartsAlone Alone { get; }

    /// <summary>What the air changes do to the options' savings.</summary>
    public AirCurves Air { get; }
}
