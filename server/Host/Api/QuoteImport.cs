using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Host.Loading;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>Quotes of many farms from one sheet.</summary>
public sealed partial class Mutation
{
    /// <summary>Looks at a sheet of quotes, and adds them as one change when asked and sound.</summary>
    public static ImportPayload ImportQuotes([FromServices] Register register, [FromServices] UploadStore uploads, ImportInput input)
    {
        using var source = ImportSource.Open(register, uploads, input);
        if (source.Text is not { } text)
        {
            return source.Nothing;
        }

        var loaded = QuoteSheet.Read(text, register.Catalogue);
        var plan = new QuotesPlan(register.Farms.Values, register.Houses.Values, register.Quotes.Values, register.Ids, source.FileName);
        plan.Add(loaded.Value?.All ?? []);
        List<Fault> faults = [.. loaded.Faults.Concat(plan.Faults).OrderBy(f => f.Code == "MORE").ThenBy(f => f.Line)];
        var farms = plan.Items.Select(i => ((QuoteFacts)i.Facts!).FarmId).Distinct().Count();
        var counted = $"{plan.Items.Count} {(plan.Items.Count == 1 ? "quote" : "quotes")}";
        var words = loaded.Value is null ? "Nothing could be read."
            : $"{counted} of {plan.Lines} {(plan.Lines == 1 ? "line" : "lines")} for {farms} {(farms == 1 ? "farm" : "farms")}.{string.Concat(loaded.Notes.Select(n => " " + n))}";
        if (plan.Items.Count == 0 || input.CheckOnly != false || (faults.Any(f => f.Code != "UNKNOWN_COLUMN") && input.GoodRowsOnly != true))
        {
            return new(false, loaded.Rows, words, faults.Select(FaultView.Of)) { CanImport = plan.Items.Count > 0 };
        }

        var outcome = register.Items.Save(register.Viewer, register.Coop.Id, $"{counted} {(plan.Items.Count == 1 ? "is" : "are")} brought in from {source.FileName}", input.RequestId, plan.Items);
        return source.Done(new(outcome.ChangeId is not null, loaded.Rows, words, [.. faults.Concat(outcome.Faults).Select(FaultView.Of)]));
    }
}

/// <summary>The sheet of quotes to fill in.</summary>
public sealed partial class Query
{
    /// <summary>A sheet of quotes to fill in, as CSV.</summary>
    public static string QuoteSheetTemplate() => QuoteSheet.Template();
}
