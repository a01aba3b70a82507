using System.Globalization;
using Google.Protobuf;
using Google.Protobuf.Reflection;

namespace StudioCalc.Cli;

/// <summary>Shows the messages on the way to an answer before the eyes of a person, and clears its line in the end.</summary>
/// <remarks>A message on the way has a share of the whole that is done, in a field <c>done_share</c>, and may name its step.</remarks>
internal static class CallProgress
{
    private const string Share = "done_share";

    /// <summary>The last message of a stream.</summary>
    public static async Task<IMessage> LastAsync(IAsyncEnumerable<IMessage> messages, Terminal terminal)
    {
        var width = 0;
        IMessage? last = null;
        try
        {
            await foreach (var message in messages.ConfigureAwait(false))
            {
                last = message;
                if (terminal.ShowsProgress && TextOf(message) is { } text)
                {
                    await terminal.Errors.WriteAsync("\r" + text.PadRight(width)).ConfigureAwait(false);
                    width = Math.Max(width, text.Length);
                }
            }
        }
        finally
        {
            if (width > 0)
            {
                await terminal.Errors.WriteAsync($"\r{new string(' ', width)}\r").ConfigureAwait(false);
            }
        }

        return last ?? throw new IOException("The call ended without an answer.");
    }

    private static string? TextOf(IMessage message)
    {
        foreach (var inner in message.Descriptor.Fields.InFieldNumberOrder()
            .Where(field => field is { FieldType: FieldType.Message, IsRepeated: false })
            .Select(field => field.Accessor.GetValue(message)).OfType<IMessage>())
        {
            var fields = inner.Descriptor.Fields.InFieldNumberOrder();
            if (fields.FirstOrDefault(field => field.Name == Share)?.Accessor.GetValue(inner) is double share)
            {
                var step = fields.FirstOrDefault(field => field.FieldType == FieldType.Enum);
                var name = step is null ? "" : Words.Sentence(Words.Value(step.EnumType, (int)step.Accessor.GetValue(inner))) + " ";
                return string.Create(CultureInfo.InvariantCulture, $"{name}{100 * share:0} %");
            }
        }

        return null;
    }
}
