namespace FarmPortfolio.Engine.Economics;

/// <summary>Order statistics of an array without sorting the whole of it; the same result and the same final order on every machine.</summary>
internal static class MultiSelect
{
    /// <summary>Moves the elements so that each wanted rank holds what a full sort would put there.</summary>
    /// <param name="values">Values without NaN; reordered.</param>
    /// <param name="ranks">Wanted ranks, rising.</param>
    public static void Partition(Span<double> values, ReadOnlySpan<int> ranks)
    {
        if (values.Length > 1 && ranks.Length > 0)
        {
            Partition(values, 0, ranks);
        }
    }

    private static void Partition(Span<double> values, int offset, ReadOnlySpan<int> ranks)
    {
        while (ranks.Length > 0)
        {
            if (values.Length <= 24)
            {
                values.Sort();
                return;
            }

            var (left, right) = Split(values);
            var below = 0;
            while (below < ranks.Length && ranks[below] - offset <= right)
            {
                below++;
            }

            var above = below;
            while (above < ranks.Length && ranks[above] - offset < left)
            {
                above++;
            }

            Partition(values[..(right + 1)], offset, ranks[..below]);
            values = values[left..];
            offset += left;
            ranks = ranks[above..];
        }
    }

    /// <summary>Hoare's partition around the median of three; afterwards [0, right] and [left, end) hold what is not larger and not smaller.</summary>
    private static (int Left, int Right) Split(Span<double> values)
    {
        var (a, b, c) = (values[0], values[values.Length / 2], values[^1]);
        var pivot = Math.Max(Math.Min(a, b), Math.Min(Math.Max(a, b), c));
        var (i, j) = (0, values.Length - 1);
        while (i <= j)
        {
            while (values[i] < pivot)
            {
                i++;
            }

            while (values[j] > pivot)
            {
                j--;
            }

            if (i <= j)
            {
                (values[i], values[j]) = (values[j], values[i]);
                i++;
                j--;
            }
        }

        return (i, j);
    }
}
