using System.Security.Cryptography;
using System.Text.Json;
using FarmPortfolio.Engine.Lending;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Engine.Tests.Studies;

namespace FarmPortfolio.Engine.Tests.Lending;

/// <summary>Loans together: what is common to all farms on a path does not spread out.</summary>
public class LoanBookTests
{
    private const int Houses = 4;
    private static readonly JsonSerializerOptions Fields = new() { IncludeFields = true };

    [Theory, InlineData(false), InlineData(true)]
    public void With_own_noise_off_equal_loans_lose_so_many_times_one_on_every_path(bool farm)
    {
        var (book, one) = (SmallCase.Book(SmallCase.Equal(Houses, ownNoise: false), Houses, farm), SmallCase.Book(SmallCase.Equal(1, ownNoise: false), 1, farm));
        Assert.Contains(one.LossUsd, l => l > 0);
        Assert.All(book.LossUsd.Zip(one.LossUsd), l => Assert.Equal(Houses * l.Second, l.First, 1e-9));
        Assert.Equal(book.AddedP99Usd, book.P99.Usd, 1e-6);
        Assert.Equal(Houses * one.MissTogether.P50, book.MissTogether.P50);
    }

    [Fact]
    public void The_tail_of_a_book_is_read_from_the_sum_and_lies_below_the_added_tails_and_above_independence()
    {
        var (book, one) = (SmallCase.Book(SmallCase.Equal(Houses, ownNoise: true), Houses, farm: false, 5_000), SmallCase.Book(SmallCase.Equal(1, ownNoise: true), 1, farm: false, 5_000));
        var sorted = book.LossUsd.Order().ToArray();
        var at = 0.95 * (sorted.Length - 1);
        Assert.Equal(sorted[(int)at] + (at - (int)at) * (sorted[(int)at + 1] - sorted[(int)at]), book.P95.Usd, 1e-9);
        Assert.True(book.P99.Usd < book.AddedP99Usd, $"{book.P99.Usd} of the book, {book.AddedP99Usd} added up");
        double Sd(IReadOnlyList<double> losses) => Math.Sqrt(losses.Sum(l => Math.Pow(l - losses.Average(), 2)) / losses.Count);
        Assert.True(Sd(book.LossUsd) > 1.2 * Math.Sqrt(Houses) * Sd(one.LossUsd), $"spread {Sd(book.LossUsd)} of four, {Sd(one.LossUsd)} of one: independent loans would have twice the spread of one");
    }

    [Fact]
    public void Shares_add_up_to_the_whole_by_every_mark()
    {
        var book = SmallCase.Book(SmallCase.Equal(Houses, ownNoise: true), Houses, farm: true);
        foreach (var shares in new[] { book.ByFuel, book.ByPlace, book.ByRetrofit })
        {
            Assert.Equal(book.AmountUsd, shares.Sum(s => s.AmountUsd), 1e-6);
            Assert.Equal(book.MeanUsd, shares.Sum(s => s.ExpectedUsd), 1e-6);
        }

        var tail = book.LossUsd.OrderDescending().Take(book.LossUsd.Count / 100).ToList();
        Assert.Equal(tail.Average(), book.ByFuel.Sum(s => s.TailUsd), 1e-6);
        Assert.Equal(1, book.NoLossShare + book.Losses.Counts.Sum() / (double)book.LossUsd.Count, 1e-12);
    }

    [Theory, InlineData(1), InlineData(2), InlineData(5)]
    public void The_same_loan_on_the_same_futures_gives_the_same_bits_on_any_number_of_threads(int threads)
    {
        const string known = "d1b265b7d0c808bd6c0f633dd675915ade0ec937726738a96bfe180437e28f26";
        var basis = SmallCase.Basis(SmallPortfolio.Of(3), threads: threads);
        var answer = LoanAnswer.Of(basis);
        var stresses = new[] { StressKind.HalfTheSaving, StressKind.MarginDown }.Select(k => LoanStress.Of(basis, k));
        var hard = LoanAnswer.Of(SmallCase.Basis(SmallPortfolio.Of(3), kind: StressKind.DearAndHard, threads: threads));
        var found = Convert.ToHexStringLower(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes((answer, stresses, hard), Fields)));
        Assert.True(known == found, $"The figures of a small loan case have the checksum {found}, and were {known}: where that is meant, write the new one here and raise StudyRun.NumbersVersion if the study moved too.");
    }
}
