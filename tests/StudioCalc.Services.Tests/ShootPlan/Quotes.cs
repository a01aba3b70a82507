using Google.Protobuf.WellKnownTypes;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <summary>Quotes to start from.</summary>
internal static class Quotes
{
    /// <summary>Three dishes of certain times: 25 + 15 + 10 min for the day, then 20 min a dish, no breaks.</summary>
    public static QuoteShootRequest Certain() => new()
    {
        Dishes = 3,
        Draws = 100,
        LoadIn = Minutes(25),
        FirstSetup = Minutes(15),
        Strike = Minutes(10),
        SetupChange = Minutes(0),
        SetupShare = Number(0),
        PlateWait = Minutes(5),
        Swap = Minutes(3),
        TryTime = Minutes(10),
        KeepChance = Number(1),
        MostTries = Number(6),
        NewPlate = Minutes(10),
        Approval = Minutes(2),
        Pause = Minutes(30),
        HoursBetweenBreaks = Number(1000),
    };

    /// <summary>The same, all measured but for the chance of a keeper.</summary>
    public static QuoteShootRequest Known(EstimateBasis basis)
    {
        var request = Certain();
        foreach (var field in QuoteShootRequest.Descriptor.Fields.InDeclarationOrder())
        {
            if (field.Accessor.GetValue(request) is QuotedTime time)
            {
                time.Basis = EstimateBasis.Measured;
            }

            if (field.Accessor.GetValue(request) is QuotedNumber number)
            {
                number.Basis = EstimateBasis.Measured;
            }
        }

        request.KeepChance.Basis = basis;
        return request;
    }

    public static QuotedTime Minutes(int likely, int? shortest = null, int? longest = null, StepSpread spread = StepSpread.Pert) => new()
    {
        Time = new()
        {
            Likely = new() { Seconds = 60 * likely },
            Shortest = new Duration { Seconds = 60 * (shortest ?? likely) },
            Longest = new Duration { Seconds = 60 * (longest ?? likely) },
            Spread = spread,
        },
    };

    public static QuotedNumber Number(double value) => new() { Value = value };
}
