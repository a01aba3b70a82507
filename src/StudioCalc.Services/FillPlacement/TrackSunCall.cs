using Google.Protobuf.WellKnownTypes;
using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>TrackSun.</content>
public sealed partial class FillPlacementAdapter
{
    private const double UsualPlateMm = 280;

    private static readonly FieldPath SunRoot = FieldPath.Root(TrackSunRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<TrackSunResponse> TrackSun(TrackSunRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(Track(request, ref none));
        }

        var trail = StepTrail.Start();
        var response = Track(request, ref trail);
        response.Working.Add(trail);
        return Task.FromResult(response);
    }

    private static TrackSunResponse Track<TTrail>(TrackSunRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(null);
        var day = LocalDay.Read(
            context, request.Date, SunRoot[TrackSunRequest.DateFieldNumber], request.TimeZone, SunRoot[TrackSunRequest.TimeZoneFieldNumber]);
        context.ReadGlass(request.Window, SunRoot[TrackSunRequest.WindowFieldNumber]);
        context.ThrowIfRefused();

        var place = request.Place;
        var beam = new SunBeam(
            request.Window.Opening(request.TableHeightMm),
            request.BearingDeg,
            request.DistanceMm,
            request.RightMm,
            request.HasPlateDiameterMm ? request.PlateDiameterMm : UsualPlateMm,
            request.Window.SkylineDeg,
            [.. request.Obstructions.Select(one => new Maths.SunObstruction(one.FromBearingDeg, one.ToBearingDeg, one.ElevationDeg))]);
        var sun = SunDay.Follow(day!.StartS, day.EndS, place.LatitudeDeg, place.LongitudeDeg, beam);
        trail.Section("sun at its highest");
        SunPosition.At(sun.NoonS, place.LatitudeDeg, place.LongitudeDeg, ref trail, "noon.");

        var response = new TrackSunResponse { Noon = Moment(sun.NoonS), ModelRevision = ModelRevision.Current };
        response.Spells.Add(sun.Spells.Select(spell => new SunSpell { Start = Moment(spell.StartS), End = Moment(spell.EndS) }));
        var total = sun.Spells.Sum(spell => spell.EndS - spell.StartS);
        response.Total = new() { Seconds = total };
        if (sun.SunriseS is { } rise)
        {
            response.Sunrise = Moment(rise);
        }

        if (sun.SunsetS is { } set)
        {
            response.Sunset = Moment(set);
        }

        if (total > 0)
        {
            context.Advisories.Add(Advise.SunOnPlate(total));
            context.Advisories.Add(Advise.SunBurns());
        }

        response.Advisories.Add(context.Advisories);
        return response;

        SunMoment Moment(long second)
        {
            var at = SunPosition.At(second, place.LatitudeDeg, place.LongitudeDeg);
            return new()
            {
                Time = new Timestamp { Seconds = second },
                LocalTime = day.Text(second),
                BearingDeg = at.BearingDeg,
                ElevationDeg = at.ElevationDeg,
            };
        }
    }
}
