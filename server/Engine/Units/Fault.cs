namespace FarmPortfolio.Engine;

/// <summary>Something a user can mend: what is wrong, where, and what would be right.</summary>
/// <param name="Code">Stable code in capitals: OUT_OF_RANGE, NAME_TAKEN.</param>
/// <param name="Field">Name of the field, as in the facts or the file's head; null = the whole item.</param>
/// <param name="Message">What is wrong, in a sentence.</param>
/// <param name="Remedy">What would be right, in a sentence.</param>
/// <param name="File">File it stands in; null = no file.</param>
/// <param name="Line">Line from 1; null = no file or the whole of it.</param>
/// <param name="Column">Column from 1; null = the whole line.</param>
public sealed record Fault(string Code, string? Field, string Message, string Remedy, string? File = null, int? Line = null, int? Column = null);
