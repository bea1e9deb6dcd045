namespace FarmPortfolio.Engine.Farms;

/// <summary>A point of the cross-section.</summary>
/// <param name="X">Metres from the left foot.</param>
/// <param name="Y">Metres over the floor.</param>
public readonly record struct ProfilePoint(double X, double Y);

/// <summary>Exact areas and volume of a house: floor, roof, side walls, end walls, perimeter, and what of each lies below a height.</summary>
public sealed class HouseGeometry
{
    private readonly RoofCurve curve;

    /// <summary>Reckons a house of the given outline.</summary>
    /// <param name="roof">Roof of a bay: hoop, Gothic arch or gable.</param>
    /// <param name="bayWidthM">Width of a bay, metres.</param>
    /// <param name="lengthM">Length, metres.</param>
    /// <param name="sideWallM">Height of side wall or gutter, metres, 0 or more.</param>
    /// <param name="ridgeM">Height of the ridge over the floor, metres, above the side wall.</param>
    /// <param name="bays">Bays side by side, 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size is not above 0 (side wall: below 0), or the ridge is not above the side wall.</exception>
    public HouseGeometry(HouseShape roof, double bayWidthM, double lengthM, double sideWallM, double ridgeM, int bays = 1)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(bayWidthM);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(lengthM);
        ArgumentOutOfRangeException.ThrowIfNegative(sideWallM);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(ridgeM, sideWallM);
        ArgumentOutOfRangeException.ThrowIfLessThan(bays, 1);
        (BayWidthM, LengthM, SideWallM, RidgeM, Bays) = (bayWidthM, lengthM, sideWallM, ridgeM, bays);
        curve = RoofCurve.Of(roof, bayWidthM / 2, ridgeM - sideWallM);
    }

    /// <summary>Width of a bay, metres.</summary>
    public double BayWidthM { get; }

    /// <summary>Length, metres.</summary>
    public double LengthM { get; }

    /// <summary>Height of side wall or gutter, metres.</summary>
    public double SideWallM { get; }

    /// <summary>Ridge over the floor, metres.</summary>
    public double RidgeM { get; }

    /// <summary>Bays.</summary>
    public int Bays { get; }

    /// <summary>Width over all bays, metres.</summary>
    public double OverallWidthM => Bays * BayWidthM;

    /// <summary>Floor, m2.</summary>
    public double FloorM2 => OverallWidthM * LengthM;

    /// <summary>Roof or arch above the side walls, m2.</summary>
    public double RoofM2 => 2 * Bays * LengthM * curve.LengthTo(curve.RiseM);

    /// <summary>Both outer side walls, m2.</summary>
    public double SideWallsM2 => 2 * SideWallM * LengthM;

    /// <summary>Both ends, gables included, m2.</summary>
    public double EndWallsM2 => EndsBelowM2(RidgeM);

    /// <summary>Edge of the floor, metres.</summary>
    public double PerimeterM => 2 * (OverallWidthM + LengthM);

    /// <summary>Volume, m3.</summary>
    public double VolumeM3 => VolumeBelowM3(RidgeM);

    /// <summary>Roof below a height over the floor, m2.</summary>
    /// <param name="heightM">Height over the floor, metres.</param>
    /// <returns>Square metres, 0 below the springing line.</returns>
    public double RoofBelowM2(double heightM) => 2 * Bays * LengthM * curve.LengthTo(Above(heightM));

    /// <summary>Side walls below a height, m2.</summary>
    /// <param name="heightM">Height over the floor, metres.</param>
    /// <returns>Square metres.</returns>
    public double SideWallsBelowM2(double heightM) => 2 * LengthM * Math.Clamp(heightM, 0, SideWallM);

    /// <summary>Both ends below a height, m2.</summary>
    /// <param name="heightM">Height over the floor, metres.</param>
    /// <returns>Square metres.</returns>
    public double EndsBelowM2(double heightM) =>
        2 * (OverallWidthM * Math.Clamp(heightM, 0, SideWallM) + 2 * Bays * curve.AreaTo(Above(heightM)));

    /// <summary>Volume below a height, m3.</summary>
    /// <param name="heightM">Height over the floor, metres.</param>
    /// <returns>Cubic metres.</returns>
    public double VolumeBelowM3(double heightM) => EndsBelowM2(heightM) / 2 * LengthM;

    /// <summary>
    /// A curtain and the space above it, exact for any of the roofs: the cross-section above the level of its edge less what lies under the slopes.
    /// </summary>
    /// <param name="shape">Its line.</param>
    /// <param name="edgeM">Height of its edge at the sides, metres, above 0 and below the ridge.</param>
    /// <param name="topM">Height of its top where it slopes, metres, from the edge up to the ridge; a flat one takes no notice.</param>
    /// <param name="flatShare">Level share of the width of a slope-flat-slope curtain, above 0 and under 1; never more than the roof leaves room for.</param>
    /// <returns>Cloth and space above.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An edge that is not between floor and ridge, or a top below the edge or above the ridge.</exception>
    public CurtainSpace Curtain(CurtainShape shape, double edgeM, double topM, double flatShare = 0.5)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(edgeM);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(edgeM, RidgeM);
        var top = shape == CurtainShape.Flat ? edgeM : topM;
        ArgumentOutOfRangeException.ThrowIfLessThan(top, edgeM);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(top, RidgeM);
        var half = edgeM <= SideWallM ? curve.HalfWidthM : curve.HalfWidthAt(Above(edgeM));
        var room = top <= SideWallM ? curve.HalfWidthM : curve.HalfWidthAt(Above(top));
        var level = shape switch { CurtainShape.Flat => half, CurtainShape.Sloped => 0, _ => Math.Min(flatShare * half, room) };
        var under = (half + level) / 2 * (top - edgeM);
        var cloth = level + Math.Sqrt((half - level) * (half - level) + (top - edgeM) * (top - edgeM));
        var ends = EndWallsM2 - EndsBelowM2(edgeM) - 4 * Bays * under;
        var line = new List<ProfilePoint>();
        for (var bay = 0; bay < Bays; bay++)
        {
            var middle = (bay + 0.5) * BayWidthM;
            line.AddRange([new(middle - half, edgeM), new(middle - level, top), new(middle + level, top), new(middle + half, edgeM)]);
        }

        return new(2 * Bays * cloth * LengthM, RoofM2 - RoofBelowM2(edgeM), SideWallsM2 - SideWallsBelowM2(edgeM), ends, ends / 2 * LengthM, line);
    }

    /// <summary>The outline of the cross-section from the left foot to the right foot.</summary>
    /// <param name="pointsPerHalf">Points along each half roof, 2 or more.</param>
    /// <returns>Points in metres.</returns>
    public IReadOnlyList<ProfilePoint> Profile(int pointsPerHalf = 24)
    {
        var points = new List<ProfilePoint> { new(0, 0) };
        for (var bay = 0; bay < Bays; bay++)
        {
            var middle = (bay + 0.5) * BayWidthM;
            for (var i = 0; i < 2 * pointsPerHalf - 1; i++)
            {
                var step = i < pointsPerHalf ? i : 2 * pointsPerHalf - 2 - i;
                var rise = curve.RiseM * Math.Sin(Math.PI / 2 * step / (pointsPerHalf - 1));
                var half = curve.HalfWidthAt(rise);
                points.Add(new(middle + (i < pointsPerHalf ? -half : half), SideWallM + rise));
            }
        }

        points.Add(new(OverallWidthM, 0));
        return points;
    }

    private double Above(double heightM) => Math.Clamp(heightM - SideWallM, 0, curve.RiseM);
}
