using StudioCalc.V1;
using UnitsNet;

namespace StudioCalc.Client;

/// <summary>Areas and distances of fall-off in any unit.</summary>
public static class FallOffUnits
{
    extension(MapFallOffRequest request)
    {
        /// <summary>Width of the area, from left to right; null when it is not set.</summary>
        public Length? Width
        {
            get => request.HasWidthMm ? UnitsNet.Length.FromMillimeters(request.WidthMm) : null;
            set
            {
                if (value is { } given)
                {
                    request.WidthMm = given.Millimeters;
                }
                else
                {
                    request.ClearWidthMm();
                }
            }
        }

        /// <summary>Depth of the area, from front to back; null when it is not set.</summary>
        public Length? Depth
        {
            get => request.HasDepthMm ? UnitsNet.Length.FromMillimeters(request.DepthMm) : null;
            set
            {
                if (value is { } given)
                {
                    request.DepthMm = given.Millimeters;
                }
                else
                {
                    request.ClearDepthMm();
                }
            }
        }
    }

    extension(DistanceReading reading)
    {
        /// <summary>Distance from the face of the source to the meter; null when it is not set.</summary>
        public Length? Distance
        {
            get => reading.HasDistanceMm ? UnitsNet.Length.FromMillimeters(reading.DistanceMm) : null;
            set
            {
                if (value is { } given)
                {
                    reading.DistanceMm = given.Millimeters;
                }
                else
                {
                    reading.ClearDistanceMm();
                }
            }
        }
    }

    extension(EstimatePlacementErrorRequest request)
    {
        /// <summary>Error of the tape, one standard deviation; null when it is not set.</summary>
        public Length? TapeError
        {
            get => request.HasTapeErrorMm ? UnitsNet.Length.FromMillimeters(request.TapeErrorMm) : null;
            set
            {
                if (value is { } given)
                {
                    request.TapeErrorMm = given.Millimeters;
                }
                else
                {
                    request.ClearTapeErrorMm();
                }
            }
        }
    }
}
