namespace FarmPortfolio.Engine.Retrofits;

/// <summary>How firm a quote is.</summary>
public enum QuoteFirmness
{
    /// <summary>Binding.</summary>
    Firm,

    /// <summary>A budget figure.</summary>
    Budget,

    /// <summary>From the catalogue.</summary>
    Catalogue,
}

/// <summary>One line of a quote.</summary>
/// <param name="HouseId">House it is for.</param>
/// <param name="RetrofitCode">Retrofit it is for.</param>
/// <param name="Cents">Amount in whole cents.</param>
/// <param name="Category">material, labour, freight, electrical, permits, removal, visit.</param>
/// <param name="Eligible">Whether a grant may count it.</param>
public sealed record QuoteLine(string HouseId, string RetrofitCode, long Cents, string Category, bool Eligible = true);

/// <summary>A supplier's quote; the supplier's name is a remark.</summary>
public sealed record QuoteFacts
{
    /// <summary>The farm.</summary>
    public required string FarmId { get; init; }

    /// <summary>Date of the quote.</summary>
    public required DateOnly QuotedOn { get; init; }

    /// <summary>Last day it holds; null = not told.</summary>
    public DateOnly? ValidUntilOn { get; init; }

    /// <summary>Firm, budget or catalogue.</summary>
    public required QuoteFirmness Firmness { get; init; }

    /// <summary>Lines.</summary>
    public IReadOnlyList<QuoteLine> Lines { get; init; } = [];
}
