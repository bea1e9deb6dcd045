using FarmPortfolio.Engine;
using FarmPortfolio.Host.Loading;
using FarmPortfolio.Host.Storage;

namespace FarmPortfolio.Host.Api;

/// <summary>The text of an import: pasted with the request, or a file sent before.</summary>
internal sealed class ImportSource : IDisposable
{
    private readonly Register register;
    private readonly UploadStore uploads;
    private readonly string? uploadId;
    private readonly Stream? bytes;

    private ImportSource(Register register, UploadStore uploads, string? uploadId, Stream? bytes, SourceText? text, Fault? fault) =>
        (this.register, this.uploads, this.uploadId, this.bytes, Text, Fault) = (register, uploads, uploadId, bytes, text, fault);

    /// <summary>The text; null where there is none.</summary>
    public SourceText? Text { get; }

    /// <summary>Why there is none.</summary>
    public Fault? Fault { get; }

    /// <summary>Name of the file the text comes from: that of the file that was sent, else as the request says.</summary>
    public string FileName => Text!.File;

    /// <summary>A record's name where the user gave none: as the file calls itself, else the file's own name.</summary>
    public string NameOr(string given, string? byFile = null) =>
        given.Trim() is { Length: > 0 } name ? name : !string.IsNullOrWhiteSpace(byFile) ? byFile.Trim() : Path.GetFileNameWithoutExtension(FileName) is { Length: > 0 } stem ? stem : FileName;

    /// <summary>What an import that has no text answers.</summary>
    public ImportPayload Nothing => new(false, 0, "Nothing could be read.", [FaultView.Of(Fault!)]);

    /// <summary>Opens the text of an import.</summary>
    public static ImportSource Open(Register register, UploadStore uploads, ImportInput input)
    {
        if (input.UploadId is not { } id)
        {
            return input.Text is { } pasted
                ? new(register, uploads, null, null, new SourceText(new StringReader(pasted), input.FileName), null)
                : new(register, uploads, null, null, null, new("EMPTY", "text", "There is no text to import.", "Choose a file, or paste its text."));
        }

        return uploads.Open(register.Viewer, register.Coop.Id, id) is { } found
            ? new(register, uploads, id, found.Bytes, SourceText.Open(found.Bytes, found.FileName, uploads.MostBytes), null)
            : new(register, uploads, null, null, null, new("NOT_FOUND", "uploadId", "The file that was sent is no longer here: it was imported, or it waited for over a week.", "Choose the file again."));
    }

    /// <summary>The import is done: the file that was sent is not needed any more.</summary>
    public ImportPayload Done(ImportPayload payload)
    {
        if (payload.Kept && uploadId is not null)
        {
            bytes?.Dispose();
            uploads.Drop(register.Viewer, register.Coop.Id, uploadId);
        }

        return payload;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Text?.Dispose();
        bytes?.Dispose();
    }
}
