using System.Numerics;
using System.Runtime.InteropServices;

namespace FarmPortfolio.Engine.Studies;

/// <summary>Arithmetic over rows of paths, each number by itself: products and sums are rounded one after the other, so any vector width gives the same bits.</summary>
internal static class Rows
{
    /// <summary>to = constant + slope x from.</summary>
    public static void Line(double constant, double slope, ReadOnlySpan<double> from, Span<double> to)
    {
        var (c, k) = (new Vector<double>(constant), new Vector<double>(slope));
        var x = Wide(from);
        var y = Wide(to);
        for (var i = 0; i < x.Length; i++)
        {
            y[i] = c + k * x[i];
        }

        for (var i = x.Length * Vector<double>.Count; i < from.Length; i++)
        {
            to[i] = constant + slope * from[i];
        }
    }

    /// <summary>sum += weight x row.</summary>
    public static void Add(Span<double> sum, double weight, ReadOnlySpan<double> row)
    {
        var w = new Vector<double>(weight);
        var s = Wide(sum);
        var x = Wide(row);
        for (var i = 0; i < x.Length; i++)
        {
            s[i] += w * x[i];
        }

        for (var i = x.Length * Vector<double>.Count; i < row.Length; i++)
        {
            sum[i] += weight * row[i];
        }
    }

    /// <summary>sum += weight x row x by.</summary>
    public static void Add(Span<double> sum, double weight, ReadOnlySpan<double> row, ReadOnlySpan<double> by)
    {
        var w = new Vector<double>(weight);
        var s = Wide(sum);
        var x = Wide(row);
        var z = Wide(by);
        for (var i = 0; i < x.Length; i++)
        {
            s[i] += w * x[i] * z[i];
        }

        for (var i = x.Length * Vector<double>.Count; i < row.Length; i++)
        {
            sum[i] += weight * row[i] * by[i];
        }
    }

    /// <summary>row = row x by x factor - less.</summary>
    public static void Scale(Span<double> row, ReadOnlySpan<double> by, double factor, double less)
    {
        var (f, l) = (new Vector<double>(factor), new Vector<double>(less));
        var x = Wide(row);
        var z = Wide(by);
        for (var i = 0; i < x.Length; i++)
        {
            x[i] = x[i] * z[i] * f - l;
        }

        for (var i = x.Length * Vector<double>.Count; i < row.Length; i++)
        {
            row[i] = row[i] * by[i] * factor - less;
        }
    }

    private static Span<Vector<double>> Wide(Span<double> row) => MemoryMarshal.Cast<double, Vector<double>>(row);

    private static ReadOnlySpan<Vector<double>> Wide(ReadOnlySpan<double> row) => MemoryMarshal.Cast<double, Vector<double>>(row);
}
