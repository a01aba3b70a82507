using System.Collections;
using System.Globalization;
using Google.Protobuf;
using StudioCalc.V1;

namespace StudioCalc.Cli;

/// <summary>Prints the working of an answer as a sum that can be followed on paper.</summary>
internal static class WorkingText
{
    private const string Wish = "include_working";

    /// <summary>Makes a request ask for its working.</summary>
    public static void AskFor(IMessage request) => request.Descriptor.FindFieldByName(Wish)?.Accessor.SetValue(request, true);

    public static void Write(IMessage answer, TextWriter output) => Write(answer, "", output);

    private static void Write(IMessage message, string heading, TextWriter output)
    {
        foreach (var field in message.Descriptor.Fields.InFieldNumberOrder())
        {
            switch (field.Accessor.GetValue(message))
            {
                case IEnumerable<WorkingStep> steps when steps.Any():
                    Steps(steps, heading, output);
                    break;
                case IList list:
                    var number = 0;
                    foreach (var item in list.OfType<IMessage>())
                    {
                        Write(item, $"{Words.Sentence(Words.Singular(Words.Label(field)))} {++number}", output);
                    }

                    break;
                case IMessage inner:
                    Write(inner, heading, output);
                    break;
            }
        }
    }

    private static void Steps(IEnumerable<WorkingStep> steps, string heading, TextWriter output)
    {
        var section = "";
        if (heading.Length > 0)
        {
            output.WriteLine(heading);
        }

        foreach (var step in steps)
        {
            if (step.Section != section)
            {
                section = step.Section;
                output.WriteLine($"{Environment.NewLine}  {Words.Sentence(section)}");
            }

            var sum = step.Expression.Length == 0 ? "" : $" = {step.Expression}";
            var line = $"    {step.Symbol}{sum} = {step.Value.ToString("G7", CultureInfo.InvariantCulture)} {step.Unit}".TrimEnd();
            output.WriteLine($"{line,-62}  {step.Source}{(step.AnswerField.Length == 0 ? "" : $"  -> {step.AnswerField}")}");
        }

        output.WriteLine();
    }
}
