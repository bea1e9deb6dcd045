namespace FarmPortfolio.Host.Tests;

/// <summary>Tests that weigh the memory of the whole process: nothing else may run beside them.</summary>
[CollectionDefinition(Name, DisableParallelization = true)]
public sealed class AloneTests
{
    public const string Name = "alone";
}
