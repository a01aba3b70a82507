using StudioCalc.Client;
using StudioCalc.V1;

namespace StudioCalc.Photos;

/// <summary>Has the numbers of one photo worked out.</summary>
internal sealed class PhotoNumbers(StudioCalcClient client, PhotoOptions options)
{
    private const string DistanceField = "camera.closeness.sensor_distance_mm";

    private readonly SettingMarks _marks = new(client);

    public async Task<PhotoAnswer> OfAsync(PhotoFile photo, CancellationToken cancellation)
    {
        var facts = PhotoReader.Read(photo);
        var notes = facts.Notes.ToList();
        var answer = new PhotoAnswer(photo, facts) { Notes = notes };
        if (notes.Exists(note => note.Subject == PhotoSubject.File && (note.IsUnread || note.Reason == PhotoReason.NoMetadata))
            && facts is { FNumber: null, ExposureTimeS: null, FocalLengthMm: null })
        {
            return answer;
        }

        answer = answer with { Sensor = SensorChoice.Of(facts, options.Sensor, notes) };
        answer = answer with { Exposure = await ExposureAsync(facts, notes, cancellation).ConfigureAwait(false) };
        answer = await FramedAsync(answer, notes, cancellation).ConfigureAwait(false);
        return answer with { DepthOfField = await DepthAsync(answer, notes, cancellation).ConfigureAwait(false) };
    }

    private async Task<EvaluateExposureResponse?> ExposureAsync(PhotoFacts facts, List<PhotoNote> notes, CancellationToken cancellation)
    {
        if (!Has(PhotoSubject.Exposure, "exposure value", notes, ("f-number", facts.FNumber), ("exposure time", facts.ExposureTimeS), ("ISO", facts.Iso)))
        {
            return null;
        }

        var scale = await ScaleAsync(facts, cancellation).ConfigureAwait(false);
        var (aperture, apertureMark) = await _marks.OfFNumberAsync(facts.FNumber!.Value, scale, cancellation).ConfigureAwait(false);
        var (speed, speedMark) = await _marks.OfTimeAsync(facts.ExposureTimeS!.Value, scale, cancellation).ConfigureAwait(false);
        var settings = new CameraSettings
        {
            Aperture = aperture,
            ShutterSpeed = speed,
            Iso = await _marks.OfIsoAsync(facts.Iso!.Value, cancellation).ConfigureAwait(false),
        };
        var answer = await AskAsync(() => client.Exposure.EvaluateExposureAsync(new() { Settings = settings, Scale = scale }, cancellation), PhotoSubject.Exposure, notes).ConfigureAwait(false);
        if (answer is not null)
        {
            // The same values, each with its mark on its own scale: a lens that opens to f/1.8 may stand on a camera of half stops.
            answer.Settings.Aperture = apertureMark ?? answer.Settings.Aperture;
            answer.Settings.ShutterSpeed = speedMark ?? answer.Settings.ShutterSpeed;
        }

        return answer;
    }

    private async Task<StopScale> ScaleAsync(PhotoFacts facts, CancellationToken cancellation) => facts.ExposureTimeS is { } time
        ? await _marks.ScaleOfAsync(time, cancellation).ConfigureAwait(false)
        : StopScale.Third;

    private async Task<Aperture> ApertureAsync(PhotoFacts facts, CancellationToken cancellation)
    {
        var scale = await ScaleAsync(facts, cancellation).ConfigureAwait(false);
        return (await _marks.OfFNumberAsync(facts.FNumber!.Value, scale, cancellation).ConfigureAwait(false)).Aperture;
    }

    private async Task<PhotoAnswer> FramedAsync(PhotoAnswer answer, List<PhotoNote> notes, CancellationToken cancellation)
    {
        var facts = answer.Facts;
        if (facts.FocalLengthMm is { } focal && answer.Sensor is not null)
        {
            var atInfinity = Camera(answer, focal, new() { Magnification = 0 });
            answer = answer with
            {
                FramingAtInfinity = await AskAsync(() => client.DepthOfField.EvaluateFramingAsync(new() { Camera = atInfinity }, cancellation), PhotoSubject.Framing, notes).ConfigureAwait(false),
            };
        }

        if (!Has(PhotoSubject.Framing, "field and angle", notes, ("focal length", facts.FocalLengthMm), ("size of the sensor", answer.Sensor), ("subject distance", Distance(facts))))
        {
            return answer;
        }

        if (facts.IsFocusedAtInfinity)
        {
            return answer with { Framing = answer.FramingAtInfinity };
        }

        var camera = Camera(answer, facts.FocalLengthMm!.Value, Closeness(facts));
        return answer with
        {
            Framing = await AskAsync(() => client.DepthOfField.EvaluateFramingAsync(new() { Camera = camera }, cancellation), PhotoSubject.Framing, notes).ConfigureAwait(false),
        };
    }

    private async Task<EvaluateDepthOfFieldResponse?> DepthAsync(PhotoAnswer answer, List<PhotoNote> notes, CancellationToken cancellation)
    {
        var facts = answer.Facts;
        if (options.PermittedBlur is not { } blur)
        {
            notes.Add(PhotoSubject.DepthOfField, PhotoReason.NoPermittedBlur, "No depth of field: the permitted blur is not given, and it has no default.");
            return null;
        }

        var needsSensor = blur.CriterionCase != PermittedBlur.CriterionOneofCase.DiameterUm;
        if (!Has(PhotoSubject.DepthOfField, "depth of field", notes, ("f-number", facts.FNumber), ("focal length", facts.FocalLengthMm), ("subject distance", Distance(facts)),
            ("size of the sensor", needsSensor ? answer.Sensor : blur)))
        {
            return null;
        }

        var request = new EvaluateDepthOfFieldRequest
        {
            Camera = Camera(answer, facts.FocalLengthMm!.Value, Closeness(facts)),
            Aperture = new() { Set = await ApertureAsync(facts, cancellation).ConfigureAwait(false) },
            PermittedBlur = blur,
        };
        return await AskAsync(() => client.DepthOfField.EvaluateDepthOfFieldAsync(request, cancellation), PhotoSubject.DepthOfField, notes).ConfigureAwait(false);
    }

    private static object? Distance(PhotoFacts facts) => facts.IsFocusedAtInfinity ? facts : facts.SubjectDistanceMm;

    private static Closeness Closeness(PhotoFacts facts) => facts.SubjectDistanceMm is { } distance ? new() { SensorDistanceMm = distance } : new() { Magnification = 0 };

    private static FocusedCamera Camera(PhotoAnswer answer, double focalLengthMm, Closeness closeness)
    {
        var camera = new FocusedCamera { Lens = new() { FocalLengthMm = focalLengthMm }, Closeness = closeness };
        if (answer.Sensor is { } sensor)
        {
            camera.Sensor = new() { Size = new() { WidthMm = sensor.Size.WidthMm, HeightMm = sensor.Size.HeightMm }, Upright = answer.Facts.IsUpright };
        }

        return camera;
    }

    private static bool Has(PhotoSubject subject, string name, List<PhotoNote> notes, params ReadOnlySpan<(string Name, object? Value)> needed)
    {
        var missing = new List<string>();
        foreach (var (part, value) in needed)
        {
            if (value is null)
            {
                missing.Add(part);
            }
        }

        if (missing.Count > 0)
        {
            notes.Add(subject, PhotoReason.NeedsOtherValue, $"No {name}: the {string.Join(" and the ", missing)} {(missing.Count == 1 ? "is" : "are")} not known.");
        }

        return missing.Count == 0;
    }

    private static async Task<T?> AskAsync<T>(Func<Task<T>> call, PhotoSubject subject, List<PhotoNote> notes)
        where T : class
    {
        try
        {
            return await call().ConfigureAwait(false);
        }
        catch (InvalidRequestException error)
        {
            var violation = error.Violations.Count > 0 ? error.Violations[0] : null;
            notes.Add(subject, violation?.Field == DistanceField ? PhotoReason.NearerThanLensFocuses : PhotoReason.Refused, violation is null
                ? "The values of the file were refused."
                : violation.Description);
            return null;
        }
    }
}
