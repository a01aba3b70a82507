using System.Collections;
using Google.Protobuf;

namespace StudioCalc.Cli;

/// <summary>Whether an answer reaches what was asked for.</summary>
/// <remarks>Where the contract may not reach it, a oneof named <c>result</c> holds <c>not_reached</c> or another member. An
/// answer with several ways is reached when one of them is; every other part of an answer must be.</remarks>
internal static class Reached
{
    public static bool By(IMessage answer)
    {
        if (answer.Descriptor.Oneofs.FirstOrDefault(oneof => oneof.Name == "result") is { } result
            && result.Accessor.GetCaseFieldDescriptor(answer) is { } found)
        {
            return found.Name != "not_reached";
        }

        return answer.Descriptor.Fields.InFieldNumberOrder().All(field => field.Accessor.GetValue(answer) switch
        {
            IMessage part => By(part),
            IList ways when field.Name == "ways" => ways.Count == 0 || ways.OfType<IMessage>().Any(By),
            IList parts => parts.OfType<IMessage>().All(By),
            _ => true,
        });
    }
}
