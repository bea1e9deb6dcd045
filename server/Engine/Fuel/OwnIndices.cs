namespace FarmPortfolio.Engine.Fuel;

/// <summary>The index as contracts have it whose own price lies off its line.</summary>
internal static class OwnIndices
{
    /// <summary>A term with the scatters its price has, which are added to those of the tank or meter where they are new.</summary>
    public static ContractTerm Scattered(ContractTerm term, SeriesBasis basis, List<PriceScatter> all)
    {
        if (!term.FollowsIndex)
        {
            return term;
        }

        int At(PriceScatter one)
        {
            var at = all.IndexOf(one);
            if (at < 0)
            {
                all.Add(one);
            }

            return at < 0 ? all.Count - 1 : at;
        }

        var own = new List<(int, double)>();
        if (PriceScatter.OfSeries(term.Facts.PriceSeriesId, basis) is { } series)
        {
            own.Add((At(series), 1 / basis.Share));
        }

        if (PriceScatter.OfTickets(term.Facts, term.KwhPerUnit) is { } tickets)
        {
            own.Add((At(tickets), 1 / ((term.Facts.IndexShare ?? 1) * basis.Share)));
        }

        return term with { Scatter = own };
    }

    /// <summary>Twelve months of the index as the contract's own price has it.</summary>
    public static Span<double> Of(ContractTerm term, ReadOnlySpan<double> index, ReadOnlySpan<double> scatter, Span<double> own)
    {
        for (var m = 0; m < 12; m++)
        {
            own[m] = Of(term, index[m], scatter, m);
        }

        return own;
    }

    /// <summary>A month of the index as the contract's own price has it.</summary>
    public static double Of(ContractTerm term, double index, ReadOnlySpan<double> scatter, int month)
    {
        if (term.Scatter.Count == 0)
        {
            return index;
        }

        var shift = 0.0;
        foreach (var (at, perUsd) in term.Scatter)
        {
            shift += scatter[12 * at + month] * perUsd;
        }

        return term.OwnIndex(index, shift);
    }
}
