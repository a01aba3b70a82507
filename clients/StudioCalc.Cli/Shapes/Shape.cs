using Google.Protobuf;
using Google.Protobuf.Reflection;
using StudioCalc.V1;

namespace StudioCalc.Cli;

/// <summary>A message of the contract that people say in one short text.</summary>
/// <param name="Form">What such a text looks like.</param>
/// <param name="Read">Reads the text; throws <see cref="FormatException"/> with what to write instead.</param>
/// <param name="Write">The text, or null when the message holds more than a text tells.</param>
internal sealed record Shape(string Form, Func<string, IMessage> Read, Func<IMessage, string?> Write)
{
    private static readonly Dictionary<string, Shape> Known = new(StringComparer.Ordinal)
    {
        [Aperture.Descriptor.FullName] = new("f/5.6", ApertureShape.Read, message => ApertureShape.Write((Aperture)message)),
        [ShutterSpeed.Descriptor.FullName] = new("1/125", ShutterSpeedShape.Read, message => ShutterSpeedShape.Write((ShutterSpeed)message)),
        [Iso.Descriptor.FullName] = new("100", IsoShape.Read, message => IsoShape.Write((Iso)message)),
        [FlashPower.Descriptor.FullName] = new("1/8", FlashPowerShape.Read, message => FlashPowerShape.Write((FlashPower)message)),
    };

    /// <summary>The shape of a message type, or null when it has none.</summary>
    public static Shape? Of(MessageDescriptor message) => Known.GetValueOrDefault(message.FullName);

    /// <summary>The text that reads as exactly this message, or null when none does.</summary>
    public string? Exact(IMessage message)
    {
        try
        {
            return Write(message) is { } text && Read(text).Equals(message) ? text : null;
        }
        catch (FormatException)
        {
            return null;
        }
    }
}
