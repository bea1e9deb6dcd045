using static System.Math;

namespace FarmPortfolio.Engine.Farms;

/// <summary>One half of a roof, from the springing line (height 0, half the width out) to the ridge (middle).</summary>
/// <param name="halfWidthM">Half the width at the springing line, metres.</param>
/// <param name="riseM">Ridge over the springing line, metres.</param>
internal abstract class RoofCurve(double halfWidthM, double riseM)
{
    /// <summary>Half the width at the springing line, metres.</summary>
    public double HalfWidthM { get; } = halfWidthM;

    /// <summary>Ridge over the springing line, metres.</summary>
    public double RiseM { get; } = riseM;

    /// <summary>Length along the curve from the springing line up to a height.</summary>
    /// <param name="heightM">Height over the springing line, 0 to the rise.</param>
    /// <returns>Metres.</returns>
    public abstract double LengthTo(double heightM);

    /// <summary>Area between the middle line and the curve from the springing line up to a height.</summary>
    /// <param name="heightM">Height over the springing line, 0 to the rise.</param>
    /// <returns>Square metres.</returns>
    public abstract double AreaTo(double heightM);

    /// <summary>Half the width at a height.</summary>
    /// <param name="heightM">Height over the springing line, 0 to the rise.</param>
    /// <returns>Metres.</returns>
    public abstract double HalfWidthAt(double heightM);

    /// <summary>The curve of a shape.</summary>
    /// <param name="shape">Hoop, Gothic arch or gable.</param>
    /// <param name="halfWidthM">Half the width, above 0.</param>
    /// <param name="riseM">Rise, above 0.</param>
    /// <returns>The curve.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The shape is no roof.</exception>
    public static RoofCurve Of(HouseShape shape, double halfWidthM, double riseM) => shape switch
    {
        HouseShape.Hoop => new HalfEllipse(halfWidthM, riseM),
        HouseShape.GothicArch => new PointedArc(halfWidthM, riseM),
        HouseShape.Gable => new Slope(halfWidthM, riseM),
        _ => throw new ArgumentOutOfRangeException(nameof(shape), shape, "a bay's roof is a hoop, a Gothic arch or a gable"),
    };

    private sealed class Slope(double w, double r) : RoofCurve(w, r)
    {
        public override double LengthTo(double heightM) => heightM / RiseM * Sqrt(HalfWidthM * HalfWidthM + RiseM * RiseM);

        public override double AreaTo(double heightM) => heightM * (HalfWidthM + HalfWidthAt(heightM)) / 2;

        public override double HalfWidthAt(double heightM) => HalfWidthM * (1 - heightM / RiseM);
    }

    /// <summary>x = w cos t, y = r sin t; the arc by 20-point Gauss-Legendre on eight pieces, exact to 1e-12 for any axis ratio up to 10.</summary>
    private sealed class HalfEllipse(double w, double r) : RoofCurve(w, r)
    {
        public override double LengthTo(double heightM)
        {
            var t = Asin(Min(1, heightM / RiseM));
            return MathNet.Numerics.Integration.GaussLegendreRule.Integrate(
                a => Sqrt(HalfWidthM * HalfWidthM * Sin(a) * Sin(a) + RiseM * RiseM * Cos(a) * Cos(a)), 0, t, 64);
        }

        public override double AreaTo(double heightM)
        {
            var t = Asin(Min(1, heightM / RiseM));
            return HalfWidthM * RiseM * (t / 2 + Sin(2 * t) / 4);
        }

        public override double HalfWidthAt(double heightM)
        {
            var s = heightM / RiseM;
            return HalfWidthM * Sqrt(Max(0, 1 - s * s));
        }
    }

    /// <summary>
    /// A circular arc from the springing line to a pointed ridge. Its pitch is alpha at the ridge and beta at the wall with
    /// alpha + beta = twice the chord's pitch; beta is upright where the rise allows, else alpha is half the chord's pitch.
    /// </summary>
    private sealed class PointedArc : RoofCurve
    {
        private readonly double alpha;
        private readonly double beta;
        private readonly double radius;

        public PointedArc(double w, double r)
            : base(w, r)
        {
            var chord = Atan2(r, w);
            alpha = Max(2 * chord - PI / 2, chord / 2);
            beta = 2 * chord - alpha;
            radius = Sqrt(w * w + r * r) / (2 * Sin((beta - alpha) / 2));
        }

        public override double LengthTo(double heightM) => radius * (beta - PitchAt(heightM));

        public override double AreaTo(double heightM)
        {
            var p = PitchAt(heightM);
            return radius * radius * ((beta - p) / 2 - (Sin(2 * beta) - Sin(2 * p)) / 4 - Sin(alpha) * (Cos(p) - Cos(beta)));
        }

        public override double HalfWidthAt(double heightM) => Max(0, radius * (Sin(PitchAt(heightM)) - Sin(alpha)));

        private double PitchAt(double heightM) => Acos(Min(Cos(alpha), Cos(beta) + heightM / radius));
    }
}
