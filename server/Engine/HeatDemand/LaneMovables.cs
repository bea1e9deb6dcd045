namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>Which movables a group of lanes has; known when the kernel is compiled, so that an hour does no more than it must.</summary>
internal interface IMovables
{
    /// <summary>Whether there is a first.</summary>
    static abstract bool First { get; }

    /// <summary>Whether there is a second.</summary>
    static abstract bool Second { get; }

    /// <summary>Whether one may be in place while the sun is up.</summary>
    static abstract bool Shades { get; }

    /// <summary>Whether one may be kept in place by cold at any hour.</summary>
    static abstract bool Keeps { get; }
}

internal readonly struct NoMovable : IMovables
{
    public static bool First => false;

    public static bool Second => false;

    public static bool Shades => false;

    public static bool Keeps => false;
}

internal readonly struct OneByNight : IMovables
{
    public static bool First => true;

    public static bool Second => false;

    public static bool Shades => false;

    public static bool Keeps => false;
}

internal readonly struct TwoByNight : IMovables
{
    public static bool First => true;

    public static bool Second => true;

    public static bool Shades => false;

    public static bool Keeps => false;
}

internal readonly struct OneShading : IMovables
{
    public static bool First => true;

    public static bool Second => false;

    public static bool Shades => true;

    public static bool Keeps => false;
}

internal readonly struct TwoShading : IMovables
{
    public static bool First => true;

    public static bool Second => true;

    public static bool Shades => true;

    public static bool Keeps => false;
}

internal readonly struct KeptByCold : IMovables
{
    public static bool First => true;

    public static bool Second => true;

    public static bool Shades => true;

    public static bool Keeps => true;
}
