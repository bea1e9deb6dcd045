using FarmPortfolio.Engine;
using FarmPortfolio.Host.Loading;
using FarmPortfolio.Host.Storage;
using Microsoft.AspNetCore.Http.Features;

namespace FarmPortfolio.Host.Api;

/// <summary>
/// Takes a large file by POST to /uploads/weather, /uploads/normals, /uploads/prices or /uploads/farms: its bytes as application/octet-stream, its name in the query, streamed to disk. What it is then imported as
/// goes by the API, which names it by the identifier answered here. The content type keeps a foreign page from sending one without the browser asking first.
/// </summary>
public static class UploadEndpoint
{
    private const string Bytes = "application/octet-stream";

    // refused after the first 64 kB: what no reader can begin with
    private static readonly string[] Hopeless = ["NO_HEAD", "NOT_TEXT", "WORKBOOK", "EMPTY", "LINE_TOO_LONG"];

    /// <summary>Maps the endpoint.</summary>
    /// <param name="app">The host.</param>
    public static void MapUploads(this WebApplication app) => app.MapPost("/uploads/{kind}", Take);

    private static async Task Take(HttpContext http, string kind, string? file)
    {
        var uploads = http.RequestServices.GetRequiredService<UploadStore>();
        var name = string.IsNullOrWhiteSpace(file) ? "a file" : file;
        if (!string.Equals(http.Request.ContentType, Bytes, StringComparison.OrdinalIgnoreCase))
        {
            await Refuse(http, StatusCodes.Status415UnsupportedMediaType, new("BYTES_ONLY", null, "A file is sent as bytes.", $"Send it with the content type {Bytes}.", name));
            return;
        }

        if (kind is not ("weather" or "normals" or "prices" or "farms" or "quotes"))
        {
            await Refuse(http, StatusCodes.Status404NotFound, new("UNKNOWN_KIND", null, $"There is no import of \"{kind}\".", "Send weather, normals, prices, farms or quotes.", name));
            return;
        }

        if (http.Request.ContentLength > uploads.MostBytes)
        {
            await Refuse(http, StatusCodes.Status413PayloadTooLarge, TooLarge(uploads, name));
            return;
        }

        if (http.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
        {
            size.MaxRequestBodySize = null;
        }

        http.RequestServices.GetRequiredService<ChosenCoop>().Read(http.Request.Headers);
        Register register;
        try
        {
            register = http.RequestServices.GetRequiredService<Register>();
        }
        catch (GraphQL.ExecutionError error)
        {
            await Refuse(http, StatusCodes.Status404NotFound, new(error.Code ?? Register.NoSuchCoop, null, "There is no such co-op.", "Choose one of yours.", name));
            return;
        }

        Fault? hopeless = null;
        try
        {
            var taken = await uploads.Take(register.Viewer, register.Coop.Id, name, http.Request.Body, head => (hopeless = Look(register, kind, name, head)) is not null, http.RequestAborted);
            if (taken is null)
            {
                await Refuse(http, hopeless is null ? StatusCodes.Status413PayloadTooLarge : StatusCodes.Status422UnprocessableEntity, hopeless ?? TooLarge(uploads, name));
                return;
            }

            await http.Response.WriteAsJsonAsync(new { uploadId = taken.Id, fileName = taken.FileName, bytes = taken.Bytes }, http.RequestAborted);
        }
        catch (OperationCanceledException) when (http.RequestAborted.IsCancellationRequested)
        {
            // the sender gave up; nothing of the file is left
        }
        catch (BadHttpRequestException)
        {
            // the connection broke within the file; nothing of it is left
        }
    }

    private static Fault? Look(Register register, string kind, string name, ReadOnlyMemory<byte> head)
    {
        using var stream = new MemoryStream(head.ToArray(), writable: false);
        using var text = SourceText.Open(stream, name, long.MaxValue);
        var (rows, faults) = kind switch
        {
            "weather" => Told(WeatherFile.Read(text)),
            "normals" => Told(MonthlyNormals.Read(text)),
            "prices" => Told(MonthlyPrices.Read(text)),
            "quotes" => Told(QuoteSheet.Read(text, register.Catalogue)),
            _ => Told(HouseSheet.Read(text, register.Catalogue)),
        };
        return faults.FirstOrDefault(f => Hopeless.Contains(f.Code, StringComparer.Ordinal)) ?? (rows == 0 && faults.Count > 0 ? faults[0] : null);

        static (int Rows, IReadOnlyList<Fault> Faults) Told<T>(Loaded<T> loaded)
            where T : class => (loaded.Rows, loaded.Faults);
    }

    private static Fault TooLarge(UploadStore uploads, string name) =>
        new("TOO_LARGE", null, $"The file is longer than {uploads.MostBytes:#,0} bytes.", "Split it, or raise Import:MaxBytes.", name);

    private static Task Refuse(HttpContext http, int status, Fault fault)
    {
        http.Response.StatusCode = status;
        return http.Response.WriteAsJsonAsync(new { faults = new[] { FaultView.Of(fault) } }, http.RequestAborted);
    }
}
