using Google.Protobuf;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <summary>Makes random requests that move a light agree with themselves, so that most have an answer.</summary>
internal static class RandomFills
{
    public static void MakeSense(IMessage message)
    {
        switch (message)
        {
            case SolveDistanceRequest request:
                Order(request.Distances);
                Flatten(request.Receiver);
                break;
            case PlanFillRequest request:
                Order(request.Distances);
                Flatten(request.Receiver);
                MakeSense(request);
                break;
        }
    }

    private static void MakeSense(PlanFillRequest request)
    {
        request.Source.Power = null;
        if (request.Source.Calibration?.Reading is not { Reading.Flash: not null } reading)
        {
            request.Source.Calibration = new()
            {
                Reading = new() { Place = request.Source.Pose.AimPoint.Clone(), Reading = Flash(2500), Power = new() { Fraction = "1/8" } },
            };
        }
        else
        {
            reading.Power ??= new() { Fraction = "1/4" };
        }

        if (request.PowerSteps is { } steps)
        {
            (steps.Scale, steps.HighestPower) = (StopScale.Whole, null);
        }

        if (request.Reading is { Flash: null })
        {
            request.Reading = Flash(500);
        }

        if (request.Under is { } under)
        {
            under.ShutterSpeed = under.Reading.Flash is null ? under.ShutterSpeed ?? new() { Mark = "1/60" } : null;
        }

        Shorten(request.Directions);
        Shorten(request.PowerList?.Powers);
        Shorten(request.DistanceList?.DistancesMm);
    }

    private static void Shorten<T>(Google.Protobuf.Collections.RepeatedField<T>? list)
    {
        while (list?.Count > 2)
        {
            list.RemoveAt(2);
        }
    }

    private static Reading Flash(double exposureLxS) => new() { Flash = new() { ExposureLxS = exposureLxS } };

    private static void Order(DistanceRange? range)
    {
        if (range is not null && range.NearestMm > range.FarthestMm)
        {
            (range.NearestMm, range.FarthestMm) = (range.FarthestMm, range.NearestMm);
        }
    }

    private static void Flatten(LightReceiver? receiver)
    {
        if (receiver is not null)
        {
            receiver.Kind = ReceiverKind.Flat;
        }
    }
}
