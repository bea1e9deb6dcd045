using System.Globalization;
using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Host.Api;

/// <summary>The price cases in words.</summary>
internal static class PriceCaseWords
{
    private const string Practice = "Common practice, no source";

    /// <summary>Name, what it does, where its figures come from.</summary>
    internal static (string Title, string Words, string Source) Of(PriceCaseKind kind) => kind switch
    {
        PriceCaseKind.SpikeOfTwoWinters => ("A spike of two winters", Say($"Gas, propane and oil cost {PriceCases.SpikeFactor} times as much for two seasons, then what they would have."),
            "Two winters over the three before: commercial gas 1.54, retail oil 1.62 in 2004 to 2006, EIA and BLS records"),
        PriceCaseKind.SlowRise => ("A slow rise", Say($"Gas, propane and oil rise by {100 * PriceCases.RisePerYear:0} % a year over what they would cost, to the end."), Practice),
        PriceCaseKind.Collapse => ("A collapse", Say($"Gas, propane and oil fall by {100 * (1 - PriceCases.CollapseFactor):0} % and stay there."),
            "Two winters over the three before: retail oil 0.62 in 2015 to 2017, commercial gas 0.79 in 2010 to 2012, EIA and BLS records"),
        PriceCaseKind.SpreadCloses => ("Gas and propane come together", Say($"Propane comes down and gas goes up in {PriceCases.ClosingSeasons} steps until the same energy costs the same in either, and stays so."),
            "The spread is that of the middle futures; five steps are common practice, no source"),
        PriceCaseKind.PropaneDoubled => ("Propane doubled for one winter", Say($"Propane costs twice as much for one season, everywhere at once."), Practice + "; no retail record of propane ships"),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "no such price case"),
    };

    private static string Say(FormattableString words) => words.ToString(CultureInfo.InvariantCulture);
}
