namespace FarmPortfolio.Engine.Units;

/// <summary>Exact US customary to SI factors. International foot 0.3048 m; international table Btu 1055.05585262 J.</summary>
public static class Us
{
    /// <summary>Metres in a foot.</summary>
    public const double FootM = 0.3048;

    /// <summary>Square metres in a square foot.</summary>
    public const double SquareFootM2 = FootM * FootM;

    /// <summary>Cubic metres in a cubic foot.</summary>
    public const double CubicFootM3 = FootM * FootM * FootM;

    /// <summary>Joules in a Btu.</summary>
    public const double BtuJ = 1055.05585262;

    /// <summary>kWh in a Btu.</summary>
    public const double BtuKwh = BtuJ / 3.6e6;

    /// <summary>kWh in a million Btu.</summary>
    public const double MmbtuKwh = BtuKwh * 1e6;

    /// <summary>Kelvin in a Fahrenheit degree.</summary>
    public const double DegreeK = 5.0 / 9.0;

    /// <summary>W/m2K in a Btu/h ft2 F.</summary>
    public const double UValue = BtuJ / 3600.0 / SquareFootM2 / DegreeK;

    /// <summary>W/mK in a Btu/h ft F.</summary>
    public const double EdgeValue = BtuJ / 3600.0 / FootM / DegreeK;

    /// <summary>m2K/W in an R-value of one ft2 F h/Btu.</summary>
    public const double RValue = 1.0 / UValue;

    /// <summary>W/K in a Btu/h F.</summary>
    public const double ConductanceWPerK = BtuJ / 3600.0 / DegreeK;

    /// <summary>Litres in a US gallon.</summary>
    public const double GallonL = 3.785411784;

    /// <summary>Degrees Celsius from Fahrenheit.</summary>
    /// <param name="fahrenheit">Degrees Fahrenheit.</param>
    /// <returns>Degrees Celsius.</returns>
    public static double C(double fahrenheit) => (fahrenheit - 32.0) * DegreeK;

    /// <summary>Degrees Fahrenheit from Celsius.</summary>
    /// <param name="celsius">Degrees Celsius.</param>
    /// <returns>Degrees Fahrenheit.</returns>
    public static double F(double celsius) => celsius / DegreeK + 32.0;
}
