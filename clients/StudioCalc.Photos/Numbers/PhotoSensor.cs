namespace StudioCalc.Photos;

/// <summary>The size of the sensor behind a photo, and how it is known.</summary>
/// <param name="Size">The size along the stored width and height.</param>
/// <param name="Source">How it is known.</param>
public sealed record PhotoSensor(FrameSize Size, SensorSource Source);

/// <summary>How the size of a sensor is known.</summary>
public enum SensorSource
{
    /// <summary>It was given.</summary>
    Given,

    /// <summary>From the camera's pixels and the resolution of the focal plane.</summary>
    FocalPlane,

    /// <summary>From the 35 mm equivalent focal length, which is rounded to whole millimetres.</summary>
    Equivalent,
}
