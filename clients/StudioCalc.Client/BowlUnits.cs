using StudioCalc.V1;
using UnitsNet;

namespace StudioCalc.Client;

/// <summary>Bowls and sight lines in any unit.</summary>
public static class BowlUnits
{
    extension(EvaluateBowlRequest request)
    {
        /// <summary>Inner diameter of the rim; null when it is not set.</summary>
        public Length? RimDiameter
        {
            get => request.HasRimDiameterMm ? UnitsNet.Length.FromMillimeters(request.RimDiameterMm) : null;
            set
            {
                if (value is { } given)
                {
                    request.RimDiameterMm = given.Millimeters;
                }
                else
                {
                    request.ClearRimDiameterMm();
                }
            }
        }

        /// <summary>Depth of the content under the rim; null when it is not set.</summary>
        public Length? ContentDepth
        {
            get => request.HasContentDepthMm ? UnitsNet.Length.FromMillimeters(request.ContentDepthMm) : null;
            set
            {
                if (value is { } given)
                {
                    request.ContentDepthMm = given.Millimeters;
                }
                else
                {
                    request.ClearContentDepthMm();
                }
            }
        }

        /// <summary>Diameter of the content's surface; null when it is not set.</summary>
        public Length? ContentDiameter
        {
            get => request.HasContentDiameterMm ? UnitsNet.Length.FromMillimeters(request.ContentDiameterMm) : null;
            set
            {
                if (value is { } given)
                {
                    request.ContentDiameterMm = given.Millimeters;
                }
                else
                {
                    request.ClearContentDiameterMm();
                }
            }
        }

        /// <summary>Elevation of the camera; null when it is not set.</summary>
        public Angle? Elevation
        {
            get => request.HasElevationDeg ? UnitsNet.Angle.FromDegrees(request.ElevationDeg) : null;
            set
            {
                if (value is { } given)
                {
                    request.ElevationDeg = given.Degrees;
                }
                else
                {
                    request.ClearElevationDeg();
                }
            }
        }

        /// <summary>Distance from the middle of the rim to the entrance pupil; null when it is not set.</summary>
        public Length? Distance
        {
            get => request.HasDistanceMm ? UnitsNet.Length.FromMillimeters(request.DistanceMm) : null;
            set
            {
                if (value is { } given)
                {
                    request.DistanceMm = given.Millimeters;
                }
                else
                {
                    request.ClearDistanceMm();
                }
            }
        }
    }

    extension(EvaluateSightLineRequest request)
    {
        /// <summary>Height of the thing in front; null when it is not set.</summary>
        public Length? FrontHeight
        {
            get => request.HasFrontHeightMm ? UnitsNet.Length.FromMillimeters(request.FrontHeightMm) : null;
            set
            {
                if (value is { } given)
                {
                    request.FrontHeightMm = given.Millimeters;
                }
                else
                {
                    request.ClearFrontHeightMm();
                }
            }
        }

        /// <summary>Height of the thing behind; null when it is not set.</summary>
        public Length? BackHeight
        {
            get => request.HasBackHeightMm ? UnitsNet.Length.FromMillimeters(request.BackHeightMm) : null;
            set
            {
                if (value is { } given)
                {
                    request.BackHeightMm = given.Millimeters;
                }
                else
                {
                    request.ClearBackHeightMm();
                }
            }
        }

        /// <summary>Gap between the two; null when it is not set.</summary>
        public Length? Gap
        {
            get => request.HasGapMm ? UnitsNet.Length.FromMillimeters(request.GapMm) : null;
            set
            {
                if (value is { } given)
                {
                    request.GapMm = given.Millimeters;
                }
                else
                {
                    request.ClearGapMm();
                }
            }
        }

        /// <summary>Elevation of the camera; null when it is not set.</summary>
        public Angle? Elevation
        {
            get => request.HasElevationDeg ? UnitsNet.Angle.FromDegrees(request.ElevationDeg) : null;
            set
            {
                if (value is { } given)
                {
                    request.ElevationDeg = given.Degrees;
                }
                else
                {
                    request.ClearElevationDeg();
                }
            }
        }
    }
}
