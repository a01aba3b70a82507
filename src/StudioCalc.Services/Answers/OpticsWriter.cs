using StudioCalc.Maths;

namespace StudioCalc.Services;

/// <summary>Writes focused lenses and sharp zones as answers; what is infinite is left unset or said by its own field.</summary>
internal static class OpticsWriter
{
    public static V1.FocusedLens Lens(LensFocus lens, SensorRead? sensor)
    {
        var answer = new V1.FocusedLens { Magnification = lens.Magnification, FocalLengthMm = lens.FocalLengthMm };
        if (lens.IsAtInfinity)
        {
            return answer;
        }

        answer.FromSensorMm = lens.FromSensorMm;
        answer.FromEntrancePupilMm = lens.FromEntrancePupilMm;
        answer.FromFrontPrincipalPlaneMm = lens.FromFrontPrincipalPlaneMm;
        if (sensor is not null)
        {
            answer.FieldWidthMm = sensor.WidthMm / lens.Magnification;
            answer.FieldHeightMm = sensor.HeightMm / lens.Magnification;
        }

        return answer;
    }

    public static V1.SharpZone Zone(LensFocus lens, Maths.SharpZone zone)
    {
        var answer = new V1.SharpZone { NearFromEntrancePupilMm = zone.NearFromEntrancePupilMm };
        if (!lens.IsAtInfinity)
        {
            answer.NearDepthMm = zone.NearDepthMm;
            answer.NearFromSensorMm = lens.FromSensorMm - zone.NearDepthMm;
        }

        if (zone.FarIsInfinite)
        {
            answer.FarIsInfinite = true;
            return answer;
        }

        answer.FarDepthMm = zone.FarDepthMm;
        answer.TotalDepthMm = zone.TotalDepthMm;
        answer.FrontShare = zone.NearDepthMm / zone.TotalDepthMm;
        answer.RearShare = zone.FarDepthMm / zone.TotalDepthMm;
        answer.FarFromEntrancePupilMm = zone.FarFromEntrancePupilMm;
        answer.FarFromSensorMm = lens.FromSensorMm + zone.FarDepthMm;
        return answer;
    }
}
