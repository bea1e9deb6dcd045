namespace FarmPortfolio.Host.Api;

/// <summary>The co-op that a request is about, by the header <see cref="Header"/>; without one it is the viewer's first.</summary>
public sealed class ChosenCoop
{
    /// <summary>Name of the header.</summary>
    public const string Header = "Farm-Coop";

    /// <summary>Identifier; null = the viewer's first.</summary>
    public string? Id { get; private set; }

    /// <summary>Reads the header of a request.</summary>
    /// <param name="headers">Headers.</param>
    public void Read(IHeaderDictionary headers) => Id = headers.TryGetValue(Header, out var named) && !string.IsNullOrWhiteSpace(named) ? named.ToString().Trim() : null;
}
