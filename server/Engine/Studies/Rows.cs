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

    /// <summary>to = from + weight x row.</summary>
    public static void Sum(ReadOnlySpan<double> from, double weight, ReadOnlySpan<double> row, Span<double> to)
    {
        var w = new Vector<double>(weight);
        var a = Wide(from);
        var x = Wide(row);
        var y = Wide(to);
        for (var i = 0; i < y.Length; i++)
        {
            y[i] = a[i] + w * x[i];
        }

        for (var i = y.Length * Vector<double>.Count; i < to.Length; i++)
        {
            to[i] = from[i] + weight * row[i];
        }
    }

    /// <summary>to = from x by x factor - less.</summary>
    public static void Scale(ReadOnlySpan<double> from, ReadOnlySpan<double> by, double factor, double less, Span<double> to)
    {
        var (f, l) = (new Vector<double>(factor), new Vector<double>(less));
        var a = Wide(from);
        var z = Wide(by);
        var y = Wide(to);
        for (var i = 0; i < y.Length; i++)
        {
            y[i] = a[i] * z[i] * f - l;
        }

        for (var i = y.Length * Vector<double>.Count; i < to.Length; i++)
        {
            to[i] = from[i] * by[i] * factor - less;
        }
    }

    /// <summary>to = (from + weight x row) x by x factor - less.</summary>
    public static void Net(ReadOnlySpan<double> from, double weight, ReadOnlySpan<double> row, ReadOnlySpan<double> by, double factor, double less, Span<double> to)
    {
        var (w, f, l) = (new Vector<double>(weight), new Vector<double>(factor), new Vector<double>(less));
        var a = Wide(from);
        var x = Wide(row);
        var z = Wide(by);
        var y = Wide(to);
        for (var i = 0; i < y.Length; i++)
        {
            y[i] = (a[i] + w * x[i]) * z[i] * f - l;
        }

        for (var i = y.Length * Vector<double>.Count; i < to.Length; i++)
        {
            to[i] = (from[i] + weight * row[i]) * by[i] * factor - less;
        }
    }

    /// <summary>sum += row.</summary>
    public static void Add(Span<double> sum, ReadOnlySpan<double> row)
    {
        var s = Wide(sum);
        var x = Wide(row);
        for (var i = 0; i < x.Length; i++)
        {
            s[i] += x[i];
        }

        for (var i = x.Length * Vector<double>.Count; i < row.Length; i++)
        {
            sum[i] += row[i];
        }
    }

    /// <summary>to += a x first + b x second, the two products added first.</summary>
    public static void AddTwo(Span<double> to, double a, ReadOnlySpan<double> first, double b, ReadOnlySpan<double> second)
    {
        var (v, w) = (new Vector<double>(a), new Vector<double>(b));
        var x = Wide(first);
        var z = Wide(second);
        var y = Wide(to);
        for (var i = 0; i < y.Length; i++)
        {
            y[i] += v * x[i] + w * z[i];
        }

        for (var i = y.Length * Vector<double>.Count; i < to.Length; i++)
        {
            to[i] += a * first[i] + b * second[i];
        }
    }

    /// <summary>row = row x what is above 0 of by.</summary>
    public static void TimesAboveZero(Span<double> row, ReadOnlySpan<double> by)
    {
        var x = Wide(row);
        var z = Wide(by);
        for (var i = 0; i < x.Length; i++)
        {
            x[i] *= Vector.Max(Vector<double>.Zero, z[i]);
        }

        for (var i = x.Length * Vector<double>.Count; i < row.Length; i++)
        {
            row[i] *= Math.Max(0, by[i]);
        }
    }

    /// <summary>row = row x what is above 0 of a + x (b + x c).</summary>
    public static void TimesQuadratic(Span<double> row, ReadOnlySpan<double> by, double a, double b, double c)
    {
        var (k, l, q) = (new Vector<double>(a), new Vector<double>(b), new Vector<double>(c));
        var x = Wide(row);
        var z = Wide(by);
        for (var i = 0; i < x.Length; i++)
        {
            x[i] *= Vector.Max(Vector<double>.Zero, k + z[i] * (l + z[i] * q));
        }

        for (var i = x.Length * Vector<double>.Count; i < row.Length; i++)
        {
            row[i] *= Math.Max(0, a + by[i] * (b + by[i] * c));
        }
    }

    /// <summary>to = (from + constant - less) x factor.</summary>
    public static void Worth(ReadOnlySpan<double> from, double constant, ReadOnlySpan<double> less, double factor, Span<double> to)
    {
        var (c, f) = (new Vector<double>(constant), new Vector<double>(factor));
        var x = Wide(from);
        var z = Wide(less);
        var y = Wide(to);
        for (var i = 0; i < y.Length; i++)
        {
            y[i] = (x[i] + c - z[i]) * f;
        }

        for (var i = y.Length * Vector<double>.Count; i < to.Length; i++)
        {
            to[i] = (from[i] + constant - less[i]) * factor;
        }
    }

    /// <summary>to = from / divisor.</summary>
    public static void Ratio(ReadOnlySpan<double> from, double divisor, Span<double> to)
    {
        var d = new Vector<double>(divisor);
        var x = Wide(from);
        var y = Wide(to);
        for (var i = 0; i < y.Length; i++)
        {
            y[i] = x[i] / d;
        }

        for (var i = y.Length * Vector<double>.Count; i < to.Length; i++)
        {
            to[i] = from[i] / divisor;
        }
    }

    /// <summary>to = (from + constant) / by, by at least the floor.</summary>
    public static void Ratio(ReadOnlySpan<double> from, double constant, ReadOnlySpan<double> by, double floor, Span<double> to)
    {
        var (c, l) = (new Vector<double>(constant), new Vector<double>(floor));
        var x = Wide(from);
        var z = Wide(by);
        var y = Wide(to);
        for (var i = 0; i < y.Length; i++)
        {
            y[i] = (x[i] + c) / Vector.Max(z[i], l);
        }

        for (var i = y.Length * Vector<double>.Count; i < to.Length; i++)
        {
            to[i] = (from[i] + constant) / Math.Max(by[i], floor);
        }
    }

    private static Span<Vector<double>> Wide(Span<double> row) => MemoryMarshal.Cast<double, Vector<double>>(row);

    private static ReadOnlySpan<Vector<double>> Wide(ReadOnlySpan<double> row) => MemoryMarshal.Cast<double, Vector<double>>(row);
}
