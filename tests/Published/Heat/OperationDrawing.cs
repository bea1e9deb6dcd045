using System.Globalization;
using System.Text;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Published.Heat;

/// <summary>Draws what foam saves against the outside temperature of the day, under each rule of operation, on the Central Park record twelve degrees F colder.</summary>
internal static class OperationDrawing
{
    private const int Width = 760;
    private const int Height = 420;
    private const double FromF = -5;
    private const double ToF = 55;
    private const double StepF = 10;

    /// <summary>The rules drawn: name, numbers, stroke.</summary>
    internal static (string Name, (string Name, double Value)[] Physics, string Stroke)[] Rules { get; } =
    [
        ("whenever it is dark", [], "#0F6B4F"),
        ("dark and below 45 F", [("foam.onBelowC", Us.C(45))], "#98480A"),
        ("dark and below 35 F; kept below 20 F", [("foam.onBelowC", Us.C(35)), ("foam.keepBelowC", Us.C(20)), ("foam.keepSunBelowWPerM2", 300), ("foam.sunThrough", 0.6)], "#1B4A9C"),
    ];

    /// <summary>Saving by the day's mean outside temperature, share; NaN where no day falls.</summary>
    internal static (double MeanF, double Saving)[] Curve((string, double)[] physics)
    {
        var house = new SemicircleHouse();
        var (stands, foam) = (house.Option(), house.With("foam", physics).Option());
        var bins = (int)((ToF - FromF) / StepF);
        var (without, with) = (new double[bins], new double[bins]);
        foreach (var year in house.Years)
        {
            var (a, b) = (HourlyHeat.Season(stands, year), HourlyHeat.Season(foam, year));
            for (var d = 0; d < year.Hours / 24; d++)
            {
                var bin = (int)Math.Floor((Us.F(year.TempC.AsSpan(24 * d, 24).ToArray().Average()) - FromF) / StepF);
                if (bin >= 0 && bin < bins)
                {
                    without[bin] += a.AsSpan(24 * d, 24).ToArray().Sum();
                    with[bin] += b.AsSpan(24 * d, 24).ToArray().Sum();
                }
            }
        }

        return [.. Enumerable.Range(0, bins).Select(i => (FromF + StepF * (i + 0.5), without[i] > 0 ? 1 - with[i] / without[i] : double.NaN))];
    }

    /// <summary>The drawing as SVG.</summary>
    internal static string Svg()
    {
        double X(double f) => 60 + (f - FromF) / (ToF - FromF) * (Width - 340);
        double Y(double s) => Height - 60 - s / 0.6 * (Height - 100);
        var svg = new StringBuilder();
        void Add(FormattableString text) => svg.Append(text.ToString(CultureInfo.InvariantCulture)).Append('\n');
        Add($"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {Width} {Height}\" font-family=\"sans-serif\" font-size=\"13\">");
        Add($"<title>What foam saves against the mean outside temperature of the day, under each rule of operation</title>");
        Add($"<rect width=\"{Width}\" height=\"{Height}\" fill=\"#FBFAF6\"/>");
        for (var s = 0; s <= 60; s += 10)
        {
            Add($"<line x1=\"60\" x2=\"{Width - 280}\" y1=\"{Y(s / 100.0):0.0}\" y2=\"{Y(s / 100.0):0.0}\" stroke=\"#D8D5CA\"/><text x=\"52\" y=\"{Y(s / 100.0) + 4:0.0}\" text-anchor=\"end\" fill=\"#1E2421\">{s} %</text>");
        }

        for (var f = 0; f <= 50; f += 10)
        {
            Add($"<text x=\"{X(f):0.0}\" y=\"{Height - 38}\" text-anchor=\"middle\" fill=\"#1E2421\">{f} F</text>");
        }

        Add($"<text x=\"{(60 + Width - 280) / 2}\" y=\"{Height - 14}\" text-anchor=\"middle\" fill=\"#5A645E\">mean outside temperature of the day</text>");
        var label = 0;
        foreach (var (name, physics, stroke) in Rules)
        {
            var points = Curve(physics).Where(p => !double.IsNaN(p.Saving)).ToArray();
            Add($"<polyline fill=\"none\" stroke=\"{stroke}\" stroke-width=\"2\" points=\"{string.Join(' ', points.Select(p => FormattableString.Invariant($"{X(p.MeanF):0.0},{Y(p.Saving):0.0}")))}\"/>");
            foreach (var p in points)
            {
                Add($"<circle cx=\"{X(p.MeanF):0.0}\" cy=\"{Y(p.Saving):0.0}\" r=\"3.5\" fill=\"{stroke}\"/>");
            }

            Add($"<text x=\"{Width - 270}\" y=\"{60 + 22 * label++}\" fill=\"{stroke}\" font-weight=\"600\">{name}</text>");
        }

        svg.Append("</svg>\n");
        return svg.ToString();
    }
}
