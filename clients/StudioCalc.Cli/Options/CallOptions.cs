using System.CommandLine;
using Google.Protobuf.Reflection;

namespace StudioCalc.Cli;

/// <summary>The options of one call's request on its command.</summary>
internal sealed class CallOptions
{
    private readonly List<(OptionSpec Spec, Option<string[]> Option)> _options = [];

    public CallOptions(MethodDescriptor method, Mentions mentions)
    {
        Tree = OptionTree.Of(method.InputType, mentions);
        foreach (var spec in Tree.SelectMany(spec => spec.All).Where(spec => spec.IsTyped))
        {
            _options.Add((spec, Make(spec, mentions.Count(spec.Name))));
        }
    }

    public IReadOnlyList<OptionSpec> Tree { get; }

    public void AddTo(Command command) => _options.ForEach(option => command.Add(option.Option));

    /// <summary>What was typed, in the order of the tree.</summary>
    public IReadOnlyList<TypedOption> Typed(ParseResult parsed) =>
    [
        .. from option in _options
           let result = parsed.GetResult(option.Option)
           where result is not null
           select new TypedOption(option.Spec, [.. result.Tokens.Select(token => token.Value)], result.IdentifierTokenCount),
    ];

    // One value for each time: when that is there, completion goes on to other options. Whether the option may stand so often is
    // checked later, with a sentence that says what to write.
    private static Option<string[]> Make(OptionSpec spec, int times)
    {
        var option = new Option<string[]>(spec.Name)
        {
            Arity = spec.Kind == OptionKind.Flag ? ArgumentArity.Zero : new ArgumentArity(0, Math.Max(1, times)),
            AllowMultipleArgumentsPerToken = false,
        };
        switch (spec.Field.FieldType)
        {
            case FieldType.Enum:
                option.CompletionSources.Add([.. EnumText.Choices(spec.Field.EnumType)]);
                break;
            case FieldType.Bool:
                option.CompletionSources.Add("true", "false");
                break;
        }

        return option;
    }
}
