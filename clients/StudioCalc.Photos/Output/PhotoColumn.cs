namespace StudioCalc.Photos;

/// <summary>One value of a photo's answer as records hold it: a text, a number, a truth, or nothing.</summary>
/// <param name="Name">Its name, with its unit at the end.</param>
/// <param name="IsWorkedOut">Whether it is worked out here, not only passed on from the file.</param>
/// <param name="Value">Takes it from an answer: a text, a double, an int, a bool, or null.</param>
public sealed record PhotoColumn(string Name, bool IsWorkedOut, Func<PhotoAnswer, object?> Value)
{
    /// <summary>All columns, in their order. CSV, JSON lines and sidecars hold the same values under the same names.</summary>
    public static IReadOnlyList<PhotoColumn> All { get; } =
    [
        Said("file", answer => answer.Photo.Name),
        Said("format", answer => answer.Facts.Format),
        Said("camera", answer => answer.Facts.Camera),
        Said("lens", answer => answer.Facts.Lens),
        Said("captured_at", answer => PhotoText.TimeOf(answer.Facts)),
        Said("orientation", answer => answer.Facts.Orientation),
        Said("width_pixels", answer => (answer.Facts.FilePixels ?? answer.Facts.CameraPixels)?.Wide),
        Said("height_pixels", answer => (answer.Facts.FilePixels ?? answer.Facts.CameraPixels)?.High),
        Said("f_number", answer => answer.Facts.FNumber),
        Said("exposure_time_s", answer => answer.Facts.ExposureTimeS),
        Said("iso", answer => answer.Facts.Iso),
        Said("focal_length_mm", answer => answer.Facts.FocalLengthMm),
        Said("equivalent_focal_length_mm", answer => answer.Facts.EquivalentFocalLengthMm),
        Said("subject_distance_mm", answer => answer.Facts.SubjectDistanceMm),
        Said("subject_is_infinite", answer => answer.Facts.IsFocusedAtInfinity ? true : null),
        Made("sensor_width_mm", answer => answer.Sensor?.Size.WidthMm),
        Made("sensor_height_mm", answer => answer.Sensor?.Size.HeightMm),
        Made("sensor_source", answer => answer.Sensor is { } sensor ? PhotoNote.Kebab(sensor.Source.ToString()) : null),
        Made("aperture_mark", answer => answer.Exposure?.Settings.Aperture is { HasMark: true } aperture ? aperture.Mark : null),
        Made("shutter_speed_mark", answer => answer.Exposure?.Settings.ShutterSpeed is { HasMark: true } speed ? speed.Mark : null),
        Made("exposure_value_stops", answer => answer.Exposure?.Settings.ExposureValueStops),
        Made("exposure_value_iso100_stops", answer => answer.Exposure?.Settings.ExposureValueIso100Stops),
        Made("magnification", answer => answer.Framing?.Focus.Magnification),
        Made("field_width_mm", answer => answer.Framing?.Focus is { HasFieldWidthMm: true } focus ? focus.FieldWidthMm : null),
        Made("field_height_mm", answer => answer.Framing?.Focus is { HasFieldHeightMm: true } focus ? focus.FieldHeightMm : null),
        Made("horizontal_angle_deg", answer => answer.Framing?.HorizontalAngleDeg),
        Made("horizontal_angle_at_infinity_deg", answer => answer.FramingAtInfinity?.HorizontalAngleDeg),
        Made("permitted_blur_um", answer => answer.DepthOfField?.PermittedBlurUm),
        Made("near_depth_mm", answer => answer.DepthOfField?.Zone is { HasNearDepthMm: true } zone ? zone.NearDepthMm : null),
        Made("far_depth_mm", answer => answer.DepthOfField?.Zone is { HasFarDepthMm: true } zone ? zone.FarDepthMm : null),
        Made("far_is_infinite", answer => answer.DepthOfField?.Zone is { HasFarIsInfinite: true } ? true : null),
        Made("total_depth_mm", answer => answer.DepthOfField?.Zone is { HasTotalDepthMm: true } zone ? zone.TotalDepthMm : null),
        Made("total_depth_with_diffraction_mm", answer => answer.DepthOfField?.ZoneWithDiffraction is { HasTotalDepthMm: true } zone ? zone.TotalDepthMm : null),
        Made("hyperfocal_mm", answer => answer.DepthOfField?.HyperfocalMm),
        Made("model_revision", answer => answer.Exposure?.ModelRevision ?? answer.Framing?.ModelRevision ?? answer.DepthOfField?.ModelRevision),
    ];

    /// <summary>The name under which the codes of the notes stand beside the columns.</summary>
    public const string NotesName = "notes";

    private static PhotoColumn Said(string name, Func<PhotoAnswer, object?> value) => new(name, IsWorkedOut: false, value);

    private static PhotoColumn Made(string name, Func<PhotoAnswer, object?> value) => new(name, IsWorkedOut: true, value);
}
