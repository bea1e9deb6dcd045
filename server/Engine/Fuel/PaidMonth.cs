using System.Numerics;
using System.Runtime.InteropServices;

namespace FarmPortfolio.Engine.Fuel;

/// <summary>A part of a price that is held between a floor and a cap: weight x min(high, max(low, a + b x index)).</summary>
/// <param name="Weight">Share of the volume.</param>
/// <param name="Adder">a, US dollars a kWh of fuel.</param>
/// <param name="Share">b.</param>
/// <param name="Low">Floor, US dollars a kWh; minus infinity = none.</param>
/// <param name="High">Cap, US dollars a kWh.</param>
public readonly record struct HeldPart(double Weight, double Adder, double Share, double Low, double High);

/// <summary>
/// The price paid in one month where it depends on nothing but that month's index: constant + slope x index + the parts held between floor and cap.
/// Every fused step is explicit, so vectors of any width give the bits of one number at a time.
/// </summary>
/// <param name="Constant">US dollars a kWh of fuel.</param>
/// <param name="Slope">Share of the index.</param>
/// <param name="Held">Parts held between a floor and a cap; empty = the price is a straight line.</param>
public sealed record PaidMonth(double Constant, double Slope, IReadOnlyList<HeldPart> Held)
{
    /// <summary>The price at an index.</summary>
    /// <param name="index">US dollars a kWh of fuel.</param>
    /// <returns>US dollars a kWh of fuel.</returns>
    public double At(double index)
    {
        var paid = Math.FusedMultiplyAdd(Slope, index, Constant);
        for (var i = 0; i < Held.Count; i++)
        {
            var h = Held[i];
            paid = Math.FusedMultiplyAdd(h.Weight, Math.Min(h.High, Math.Max(h.Low, Math.FusedMultiplyAdd(h.Share, index, h.Adder))), paid);
        }

        return paid;
    }

    /// <summary>The prices at many indices.</summary>
    /// <param name="index">US dollars a kWh of fuel.</param>
    /// <param name="paid">Filled, as long as <paramref name="index"/>.</param>
    public void Pay(ReadOnlySpan<double> index, Span<double> paid)
    {
        var vectors = MemoryMarshal.Cast<double, Vector<double>>(index);
        var into = MemoryMarshal.Cast<double, Vector<double>>(paid[..index.Length]);
        var (slope, constant) = (new Vector<double>(Slope), new Vector<double>(Constant));
        for (var v = 0; v < vectors.Length; v++)
        {
            into[v] = Vector.FusedMultiplyAdd(slope, vectors[v], constant);
        }

        for (var i = 0; i < Held.Count; i++)
        {
            var h = Held[i];
            var (weight, share, adder, low, high) = (new Vector<double>(h.Weight), new Vector<double>(h.Share), new Vector<double>(h.Adder), new Vector<double>(h.Low), new Vector<double>(h.High));
            for (var v = 0; v < vectors.Length; v++)
            {
                into[v] = Vector.FusedMultiplyAdd(weight, Vector.Min(high, Vector.Max(low, Vector.FusedMultiplyAdd(share, vectors[v], adder))), into[v]);
            }
        }

        for (var i = vectors.Length * Vector<double>.Count; i < index.Length; i++)
        {
            paid[i] = At(index[i]);
        }
    }
}
