namespace FarmPortfolio.Host.Api;

/// <summary>What the drawing of a house needs beside its geometry.</summary>
public sealed partial class HouseView
{
    /// <summary>Catalogue codes of the retrofits already there.</summary>
    public IEnumerable<string> InstalledCodes => item.Facts.RetrofitsInstalled;
}
