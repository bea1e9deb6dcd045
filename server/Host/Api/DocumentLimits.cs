using GraphQL;
using GraphQLParser;
using GraphQLParser.AST;

namespace FarmPortfolio.Host.Api;

/// <summary>
/// What a query's text may ask before anything looks into it. Validation and the reckoning of its cost follow every spread of a fragment, so a text of a few lines, in which each
/// fragment spreads the next one twice, would keep them busy for ever; here each fragment is counted once.
/// </summary>
public static class DocumentLimits
{
    /// <summary>Longest text of a query, characters: the longest page sends a fifth of it. What a mutation saves stands in its variables.</summary>
    public const int MostCharacters = 32 * 1024;

    /// <summary>Most fields that a query may have once its fragments are written out, lists counted once.</summary>
    public const int MostFields = ApiSetup.MaxComplexity;

    private const int MostDirectives = 100;

    /// <summary>Reads a query.</summary>
    /// <param name="query">Text.</param>
    /// <returns>Its document; or no document and why it is refused. A text that cannot be parsed is left to whoever tells its fault.</returns>
    public static (GraphQLDocument? Document, string? Refusal) Read(string query)
    {
        if (query.Length > MostCharacters)
        {
            return (null, $"A query may have {MostCharacters:#,0} characters; this one has {query.Length:#,0}. Put what is saved into variables.");
        }

        GraphQLDocument document;
        try
        {
            document = Parser.Parse(query);
        }
        catch (GraphQLParser.Exceptions.GraphQLParserException)
        {
            return (null, null);
        }

        var fragments = document.Definitions.OfType<GraphQLFragmentDefinition>().GroupBy(f => f.FragmentName.Name.StringValue, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        var counter = new Counter(fragments);
        var fields = document.Definitions.Sum(d => d switch
        {
            GraphQLOperationDefinition o => counter.Of(o.SelectionSet),
            GraphQLFragmentDefinition f => counter.Of(f.SelectionSet),
            _ => 0,
        });
        return fields > MostFields ? (null, $"The query asks for more than {MostFields:#,0} fields once its fragments are written out.")
            : counter.Directives > MostDirectives ? (null, $"A query may have {MostDirectives} directives.")
            : (document, null);
    }

    private sealed class Counter(Dictionary<string, GraphQLFragmentDefinition> fragments)
    {
        private readonly Dictionary<string, double> known = new(StringComparer.Ordinal);

        public int Directives { get; private set; }

        public double Of(GraphQLSelectionSet? set)
        {
            var fields = 0.0;
            foreach (var node in set?.Selections ?? [])
            {
                Directives += (node as IHasDirectivesNode)?.Directives?.Count ?? 0;
                fields += node switch
                {
                    GraphQLField field => 1 + Of(field.SelectionSet),
                    GraphQLInlineFragment inline => Of(inline.SelectionSet),
                    GraphQLFragmentSpread spread => Of(spread.FragmentName.Name.StringValue),
                    _ => 0,
                };
            }

            return fields;
        }

        // a fragment within itself counts nothing here; validation refuses it by name
        private double Of(string name)
        {
            if (known.TryGetValue(name, out var counted) || !fragments.TryGetValue(name, out var fragment))
            {
                return counted;
            }

            known[name] = 0;
            return known[name] = Of(fragment.SelectionSet);
        }
    }
}
