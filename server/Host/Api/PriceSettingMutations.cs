using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>Price settings to save.</summary>
public sealed record SavePriceSettingsInput([property: Id] string SetId, int ExpectedRevision, [property: Id] string RequestId, PriceSettingsInput Settings, bool? CheckOnly);

/// <summary>Correlations to save, order gas, propane, oil, electricity, row by row; null = the defaults.</summary>
public sealed record SaveCorrelationsInput([property: Id] string SetId, int ExpectedRevision, [property: Id] string RequestId, IReadOnlyList<double>? ShortTerm, IReadOnlyList<double>? LongTerm, bool? CheckOnly);

/// <summary>The correlations that four prices can have nearest to some that they cannot.</summary>
[Name("NearestCorrelations")]
public sealed record NearestCorrelationsView(string Field, IEnumerable<double> Values, double Distance);

/// <summary>Correlations of the fuels' prices, order gas, propane, oil, electricity, row by row.</summary>
[Name("PriceCorrelations")]
public sealed record PriceCorrelationsView(
    IEnumerable<double> ShortTerm, IEnumerable<double> LongTerm, bool IsOwn, IEnumerable<double> UsualShortTerm, IEnumerable<double> UsualLongTerm, IEnumerable<double> FittedShortTerm, IEnumerable<double> FittedLongTerm, IEnumerable<int> SharedMonths);

/// <summary>Correlations in use.</summary>
public sealed partial class CoopView
{
    /// <summary>Correlations of the fuels' prices: in use, the defaults, and what the records in use say.</summary>
    public PriceCorrelationsView PriceCorrelations
    {
        get
        {
            var set = register.SetFacts;
            var records = register.Now.Prices.Select(p => (p.Key, Engine.Fuel.PriceRecord.Of(p.Value).Record)).Where(p => p.Record is not null && (int)p.Key < Correlation.Fuels).ToDictionary(p => p.Key, p => p.Record!);
            var fit = CorrelationFit.Of(records);
            return new(
                set.ShortCorrelations ?? Correlation.ShortDefault, set.LongCorrelations ?? Correlation.LongDefault, set.ShortCorrelations is not null || set.LongCorrelations is not null,
                Correlation.ShortDefault, Correlation.LongDefault, fit.ShortTerm, fit.LongTerm, fit.Months);
        }
    }
}

/// <summary>Saving price settings.</summary>
public sealed partial class Mutation
{
    /// <summary>Saves how one fuel's price is assumed to move and what an entered level means, or only checks it.</summary>
    public static SavePayload SavePriceSettings([FromServices] Register register, SavePriceSettingsInput input)
    {
        if (register.Set is not { } set || set.Id != input.SetId)
        {
            return Missing("set of assumptions");
        }

        var facts = input.Settings.On(set.Facts);
        var faults = ScenarioChecks.Of(facts);
        return faults.Count > 0 || input.CheckOnly == true
            ? new(null, false, faults.Select(FaultView.Of))
            : Saved(register.Items.Save(register.Viewer, register.Coop.Id, $"price settings of {Plain(input.Settings.Fuel)} are changed", input.RequestId, [new(ItemKind.ScenarioSet, set.Id, input.ExpectedRevision, facts, set.Remarks)]));
    }

    /// <summary>Saves correlations of the fuels' prices, or only checks them.</summary>
    public static SavePayload SavePriceCorrelations([FromServices] Register register, SaveCorrelationsInput input)
    {
        if (register.Set is not { } set || set.Id != input.SetId)
        {
            return Missing("set of assumptions");
        }

        var faults = Checked(input.ShortTerm, "shortTerm").Concat(Checked(input.LongTerm, "longTerm")).ToList();
        if (faults.Count > 0 || input.CheckOnly == true)
        {
            return new(null, false, faults.Select(f => FaultView.Of(f.Fault))) { NearestCorrelations = faults.Select(f => f.Nearest).OfType<NearestCorrelationsView>() };
        }

        return Saved(register.Items.Save(register.Viewer, register.Coop.Id, "correlations of prices are changed", input.RequestId,
            [new(ItemKind.ScenarioSet, set.Id, input.ExpectedRevision, set.Facts with { ShortCorrelations = input.ShortTerm, LongCorrelations = input.LongTerm }, set.Remarks)]));
    }

    private static IEnumerable<(Fault Fault, NearestCorrelationsView? Nearest)> Checked(IReadOnlyList<double>? matrix, string field)
    {
        foreach (var fault in matrix is null ? [] : Correlation.Check(matrix, field))
        {
            yield return (fault, fault.Code != Correlation.Impossible ? null : Correlation.Nearest(matrix!) is var (nearest, distance) ? new(field, nearest, distance) : null);
        }
    }

    private static string Plain(FuelKind fuel) => fuel switch
    {
        FuelKind.NaturalGas => "natural gas",
        FuelKind.FuelOil => "No. 2 oil",
        FuelKind.WoodPellets => "wood pellets",
        _ => fuel.ToString().ToLowerInvariant(),
    };
}
