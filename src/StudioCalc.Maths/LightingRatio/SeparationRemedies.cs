using static System.Math;

namespace StudioCalc.Maths;

/// <summary>A change that brings two readings far enough apart to tell the flash, and the calculation run again with it.</summary>
/// <param name="ByShutterSpeed">Whether the daylight is dimmed by a faster shutter speed; otherwise the flash is raised.</param>
/// <param name="ChangeStops">Light gained by what it acts on. [stops]</param>
/// <param name="Outcome">The calculation run again.</param>
public sealed record SeparationRemedy(bool ByShutterSpeed, double ChangeStops, Separation Outcome);

/// <summary>What helps where <see cref="Separation"/> does not tell the flash.</summary>
/// <remarks>
/// <code>
/// c = log2((2^needed - 1) / (2^over - 1))                         (25)
/// </code>
/// <para>c: stops that the flash must gain over the daylight, rounded up to the next step. It rests on a difference that
/// the meter hardly sees, so it is a start; equal readings give none.</para>
/// </remarks>
public static class SeparationRemedies
{
    private const double Rounding = 1e-9;

    /// <summary>The remedies, empty when the flash is told or the readings are equal.</summary>
    /// <param name="totalFNumber">F-number read for both.</param>
    /// <param name="daylightFNumber">F-number read for the daylight.</param>
    /// <param name="meterErrorStops">Error of a reading in stops.</param>
    /// <param name="scale">The steps in which shutter speed and power change.</param>
    public static IReadOnlyList<SeparationRemedy> For(
        double totalFNumber, double daylightFNumber, double meterErrorStops, StopScale scale)
    {
        var none = default(NoTrail);
        var read = Separation.Of(totalFNumber, daylightFNumber, meterErrorStops, ref none);
        if (read.IsTold || read.TotalOverDaylightStops <= Rounding)
        {
            return [];
        }

        var needed = read.TotalOverDaylightStops + read.ShortfallStops;
        var gain = Log2((Pow(2, needed) - 1) / (Pow(2, read.TotalOverDaylightStops) - 1));
        var daylight = daylightFNumber * daylightFNumber;
        var flash = totalFNumber * totalFNumber - daylight;
        var faster = StepUp(gain, scale == StopScale.Tenth ? StopScale.Third : scale);
        var raised = StepUp(gain, scale);
        return
        [
            new(true, -faster, Again(flash, daylight * Pow(2, -faster))),
            new(false, raised, Again(flash * Pow(2, raised), daylight)),
        ];

        Separation Again(double flashLight, double daylightLight) =>
            Separation.Of(Sqrt(flashLight + daylightLight), Sqrt(daylightLight), meterErrorStops, ref none);
    }

    private static double StepUp(double stops, StopScale scale) =>
        Ceiling(stops * scale.StepsPerStop() - Rounding) / scale.StepsPerStop();
}
