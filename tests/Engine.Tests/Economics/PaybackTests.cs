using CsCheck;
using FarmPortfolio.Engine.Economics;

namespace FarmPortfolio.Engine.Tests.Economics;

public class PaybackTests
{
    [Fact]
    public void A_renewal_that_undoes_the_payback_moves_the_lasting_one()
    {
        double[] net = [400, 400, 400, 400 - 900, 400, 400, 400];
        Assert.Equal((3, 5), Counted(1000, net));
    }

    [Fact]
    public void Never_is_an_outcome()
    {
        double[] net = [100, 100, 100];
        Assert.Equal((0, 0), Counted(1000, net));
        Assert.Null(new Payback([0.2, 0.1], 0.7, 0).SeasonOf(0.5));
    }

    [Fact]
    public void Order_statistics_are_those_of_a_sort() => Gen.Double[-1e6, 1e6].Array[40, 600].Sample(
        values =>
        {
            var sorted = values.Order().ToArray();
            var d = Distribution.Of(values, 2);
            var at = 0.25 * (sorted.Length - 1);
            var low = (int)at;
            return d.P25 == sorted[low] + (at - low) * (sorted[low + 1] - sorted[low]);
        });

    private static (int First, int Lasting) Counted(double outlay, double[] net)
    {
        var counted = new PaybackSeasons(1);
        counted.Count(net, 0, net.Length, [outlay], 0.05);
        return (counted.First[0], counted.Lasting[0]);
    }
}
