using CsCheck;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Google.Protobuf.WellKnownTypes;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <summary>Mends random quotes, portions and handovers: few draws of short days, with times in order.</summary>
internal static class RandomQuotes
{
    public static Gen<object>? Own(FieldDescriptor field) => (field.ContainingType.Name, field.Name) switch
    {
        ("UncertainTime", "likely") => Gen.Int[0, 900_000].Select(ms => (object)Duration.FromTimeSpan(TimeSpan.FromMilliseconds(ms))),
        ("QuotedNumber", "value") => Gen.Double[0.5, 1].Select(value => (object)value),
        ("QuoteShootRequest", "dishes") => Gen.UInt[1, 12].Select(count => (object)count),
        ("QuoteShootRequest", "shots_per_dish") => Gen.UInt[1, 3].Select(count => (object)count),
        ("QuoteShootRequest", "draws") => Gen.UInt[100, 150].Select(count => (object)count),
        ("EstimatePortionsRequest", "plate_chance") => Gen.Double[0.2, 1].Select(value => (object)value),
        ("EstimateHandoverRequest", "line_mbit_per_s") => Gen.Double[1, 1000].Select(value => (object)value),
        _ => null,
    };

    public static void MakeSense(IMessage message)
    {
        if (message is not QuoteShootRequest quote)
        {
            return;
        }

        quote.Draws = quote.HasDraws ? quote.Draws : 120;
        if (quote.MostTries is { } tries)
        {
            tries.Value = Math.Ceiling(6 * tries.Value);
        }

        foreach (var field in QuoteShootRequest.Descriptor.Fields.InDeclarationOrder())
        {
            if (field.Accessor.GetValue(quote) is QuotedTime time)
            {
                Mend(time.Time);
            }
        }
    }

    /// <summary>Puts the three times in order.</summary>
    public static void Mend(UncertainTime time)
    {
        var likely = time.Likely.ToTimeSpan();
        time.Shortest = time.Shortest is null ? null : Duration.FromTimeSpan(likely / 2);
        time.Longest = time.Longest is null ? null : Duration.FromTimeSpan(likely * 1.5);
    }
}
