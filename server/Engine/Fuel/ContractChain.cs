namespace FarmPortfolio.Engine.Fuel;

/// <summary>A contract and what it rolls into, one after another over the months of a horizon.</summary>
internal static class ContractChain
{
    /// <summary>No contract runs: the index is paid.</summary>
    public const int None = -1;

    /// <summary>Which contract of a chain runs in each month.</summary>
    /// <param name="first">Contract in force.</param>
    /// <param name="byId">Contracts by identifier, for what one rolls into; null = none is known.</param>
    /// <param name="firstSeason">Year of the July of season 0.</param>
    /// <param name="seasons">Seasons, 1 or more.</param>
    /// <param name="facts">Contracts met so far, by the number that a month names; those of this chain are added.</param>
    /// <param name="faults">Told what does not fit.</param>
    /// <returns>Number of the contract by month from the July of season 0, or <see cref="None"/>.</returns>
    public static int[] Of(ContractFacts first, Func<string, ContractFacts?>? byId, int firstSeason, int seasons, List<ContractFacts> facts, List<Fault> faults)
    {
        var origin = 12 * firstSeason + 6;
        int Number(DateOnly day) => 12 * day.Year + day.Month - 1 - origin;
        var months = new int[12 * seasons];
        Array.Fill(months, None);
        var (at, contract) = (first.StartsOn is { } start ? Math.Max(0, Number(start)) : 0, first);
        var ended = -1;
        while (true)
        {
            var end = contract.EndsOn is { } last ? Number(last) : int.MaxValue;
            if (facts.IndexOf(contract) is var known && known < 0)
            {
                facts.Add(contract);
                known = facts.Count - 1;
            }

            if (!ReferenceEquals(contract, first) && end <= ended)
            {
                faults.Add(new("ROLLS_INTO_THE_PAST", "rollsIntoContractId", "The contract rolls into one that has ended by then.", "Give the following contract a later last day, or leave it open."));
                return months;
            }

            for (; at < months.Length && at <= end; at++)
            {
                months[at] = known;
            }

            if (at >= months.Length || contract.RollsIntoContractId is not { } next)
            {
                return months;
            }

            ended = end;
            if (byId?.Invoke(next) is not { } following)
            {
                faults.Add(new("NO_CONTRACT", "rollsIntoContractId", "The contract rolls into one that is not there.", "Choose a contract of this tank or meter, or none for the index."));
                return months;
            }

            if (following == contract)
            {
                // renewed on the same terms
                Array.Fill(months, known, at, months.Length - at);
                return months;
            }

            contract = following;
        }
    }
}
