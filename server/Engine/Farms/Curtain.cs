namespace FarmPortfolio.Engine.Farms;

/// <summary>The line of a night curtain across a bay.</summary>
public enum CurtainShape
{
    /// <summary>Level from side to side.</summary>
    Flat,

    /// <summary>Straight up from each side to a line under the ridge.</summary>
    Sloped,

    /// <summary>Up from each side, level in the middle.</summary>
    SlopeFlatSlope,
}

/// <summary>A curtain's cloth and the space above it, over all bays.</summary>
/// <param name="ClothM2">Cloth, m2.</param>
/// <param name="RoofAboveM2">Roof above the cloth's edge, m2.</param>
/// <param name="SidesAboveM2">Side walls above the cloth's edge, m2.</param>
/// <param name="EndsAboveM2">Ends above the cloth, m2.</param>
/// <param name="VolumeAboveM3">Air above the cloth, m3.</param>
/// <param name="Line">The line of the cloth across the house, left to right.</param>
public sealed record CurtainSpace(double ClothM2, double RoofAboveM2, double SidesAboveM2, double EndsAboveM2, double VolumeAboveM3, IReadOnlyList<ProfilePoint> Line);
