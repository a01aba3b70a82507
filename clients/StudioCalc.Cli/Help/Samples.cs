using System.Text;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using StudioCalc.Contracts;

namespace StudioCalc.Cli;

/// <summary>The sample request of each call, from the files of samples inside this assembly.</summary>
internal static class Samples
{
    /// <summary>The sample as it stands in its file; null for a call without one.</summary>
    public static string? TextOf(MethodDescriptor method)
    {
        using var stream = typeof(Samples).Assembly.GetManifestResourceStream($"examples/{Words.Kebab(method.Name)}.json");
        if (stream is null)
        {
            return null;
        }

        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd().TrimEnd();
    }

    /// <summary>The sample as a request; null for a call without one.</summary>
    public static IMessage? Of(MethodDescriptor method)
    {
        if (TextOf(method) is not { } text)
        {
            return null;
        }

        var request = method.InputType.Parser.ParseFrom(ByteString.Empty);
        var violations = new Violations();
        ContractJson.Read(request, Encoding.UTF8.GetBytes(text), violations);
        return violations.Any ? throw new InvalidOperationException($"The sample of {method.Name} is not a request of it.") : request;
    }
}
