using System.Collections;
using Google.Protobuf;

namespace StudioCalc.Cli;

/// <summary>Whether an answer reaches what was asked for.</summary>
/// <remarks>Where the contract may not reach it, a oneof named <c>result</c> holds <c>not_reached</c> or another member. An
/// answer with several ways is reached when one of them is.</remarks>
internal static class Reached
{
    public static bool By(IMessage answer)
    {
        var results = Results(answer).ToList();
        return results.Count == 0 || results.Exists(reached => reached);
    }

    private static IEnumerable<bool> Results(IMessage message)
    {
        if (message.Descriptor.Oneofs.FirstOrDefault(oneof => oneof.Name == "result") is { } result
            && result.Accessor.GetCaseFieldDescriptor(message) is { } field)
        {
            return [field.Name != "not_reached"];
        }

        return message.Descriptor.Fields.InFieldNumberOrder()
            .Select(inner => inner.Accessor.GetValue(message))
            .SelectMany(value => value switch
            {
                IMessage inner => Results(inner),
                IList list => list.OfType<IMessage>().SelectMany(Results),
                _ => [],
            });
    }
}
