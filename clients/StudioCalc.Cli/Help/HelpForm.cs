namespace StudioCalc.Cli;

/// <summary>What stands behind an option.</summary>
internal static class HelpForm
{
    public static string Of(OptionSpec spec) => spec.Kind switch
    {
        OptionKind.Shape => Shape.Of(spec.Field.MessageType)!.Form,
        OptionKind.Flag or OptionKind.Group => "",
        _ => ValueText.Form(spec.Field),
    };
}
