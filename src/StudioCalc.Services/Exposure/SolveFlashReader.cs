using StudioCalc.Maths;
using StudioCalc.V1;
using Unknown = StudioCalc.V1.FlashUnknown;

namespace StudioCalc.Services;

/// <summary>Reads a flash request as the maths' input, with the rules that hold between its fields.</summary>
internal static class SolveFlashReader
{
    private const string LeftOut = "Is solved for; leave it out.";
    private const string Needed = "Must be given unless it is solved for.";
    private const string OnlyForPower = "Belongs to power as the unknown; leave it out.";

    private static readonly FieldPath Root = FieldPath.Root(SolveFlashRequest.Descriptor);

    /// <summary>Reads the request, or returns null after noting every bad field.</summary>
    public static FlashInput? Read<TTrail>(RequestContext context, SolveFlashRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var unknown = request.Unknown;
        var powers = SolveFlashPowers.Read(context, request, Root);
        var units = new List<Maths.FlashUnit?>();
        for (var i = 0; i < request.Units.Count; i++)
        {
            trail.Section($"filters of unit {i + 1}");
            units.Add(SolveFlashUnits.Read(context, request.Units[i], i, i == 0 ? unknown : Unknown.Unspecified, ref trail));
        }

        var aperture = OneOf(context, unknown == Unknown.Aperture, request.Aperture is not null, SolveFlashRequest.ApertureFieldNumber)
            ? context.Read(request.Aperture!, Root[SolveFlashRequest.ApertureFieldNumber])
            : null;
        var iso = OneOf(context, unknown == Unknown.Iso, request.Iso is not null, SolveFlashRequest.IsoFieldNumber)
            ? context.Read(request.Iso!, Root[SolveFlashRequest.IsoFieldNumber])
            : null;
        if (unknown == Unknown.Pops && request.HasPops)
        {
            Refuse(context, SolveFlashRequest.PopsFieldNumber, RefusalReason.Conflict, LeftOut);
        }

        trail.Section("lens");
        var n = LossReader.ReadLossStops(request.LensFilters, ref trail);
        var closeUp = context.Read(request.CloseUp, Root[SolveFlashRequest.CloseUpFieldNumber], ref trail);
        var limits = context.ReadLimits(request.Camera, Root[SolveFlashRequest.CameraFieldNumber]);
        Within(context, aperture, limits?.WidestFNumber, limits?.SmallestFNumber, SolveFlashRequest.ApertureFieldNumber);
        Within(context, iso, limits?.LowestIso, limits?.HighestIso, SolveFlashRequest.IsoFieldNumber);
        if (closeUp is not { } c || powers is null || units.Contains(null) || context.Violations.Any)
        {
            return null;
        }

        return new()
        {
            Unknown = ToMaths(unknown),
            First = units[0]!,
            Others = [.. units.Skip(1).OfType<Maths.FlashUnit>()],
            FNumber = aperture ?? 1,
            Iso = iso ?? 100,
            Pops = request.HasPops ? (int)request.Pops : 1,
            LensLossStops = trail.Let("n", n + c, "stops", "losses in the lens add"),
            CompensationStops = request.CompensationStops,
            Scale = context.Scale,
            PowersBelowFullStops = powers,
            Limits = limits!,
            IncidentConstant = request.HasIncidentConstant ? request.IncidentConstant : Maths.Receptor.Flat.Default(),
        };
    }

    /// <summary>Notes a field that is given although it is solved for, or missing although it is not; true when it is to be read.</summary>
    internal static bool OneOf(RequestContext context, bool isSolved, bool isGiven, string path)
    {
        if (isSolved == isGiven)
        {
            context.Violations.Add(path, isSolved ? RefusalReason.Conflict : RefusalReason.Required, isSolved ? LeftOut : Needed);
        }

        return isGiven && !isSolved;
    }

    /// <summary>Notes a field that stands only with power as the unknown.</summary>
    internal static void ForPowerOnly(RequestContext context, SolveFlashRequest request, bool isGiven, int fieldNumber)
    {
        if (isGiven && request.Unknown != Unknown.Power)
        {
            Refuse(context, fieldNumber, RefusalReason.Conflict, OnlyForPower);
        }
    }

    private static bool OneOf(RequestContext context, bool isSolved, bool isGiven, int fieldNumber) =>
        OneOf(context, isSolved, isGiven, Root[fieldNumber].ToString());

    private static void Within(RequestContext context, double? value, double? low, double? high, int fieldNumber)
    {
        const double rounding = 1e-9;
        if (value < low * (1 - rounding) || value > high * (1 + rounding))
        {
            Refuse(context, fieldNumber, RefusalReason.Conflict, "Lies beyond the limits of the camera or its lens.");
        }
    }

    private static void Refuse(RequestContext context, int fieldNumber, RefusalReason reason, string description) =>
        context.Violations.Add(Root[fieldNumber].ToString(), reason, description);

    private static Maths.FlashUnknown ToMaths(Unknown unknown) => unknown switch
    {
        Unknown.Aperture => Maths.FlashUnknown.Aperture,
        Unknown.Iso => Maths.FlashUnknown.Iso,
        Unknown.Distance => Maths.FlashUnknown.Distance,
        Unknown.Power => Maths.FlashUnknown.Power,
        Unknown.Pops => Maths.FlashUnknown.Pops,
        Unknown.GuideNumber => Maths.FlashUnknown.GuideNumber,
        _ => throw new ArgumentOutOfRangeException(nameof(unknown)),
    };
}
