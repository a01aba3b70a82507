using StudioCalc.V1;
using UnitsNet;

namespace StudioCalc.Client;

/// <summary>Places, sizes and light sources of a set in any unit.</summary>
public static class SetUnits
{
    extension(Point point)
    {
        /// <summary>Distance to the right of the plate's centre, seen from the front; null when it is not set.</summary>
        public Length? X
        {
            get => point.HasXMm ? UnitsNet.Length.FromMillimeters(point.XMm) : null;
            set
            {
                if (value is { } given)
                {
                    point.XMm = given.Millimeters;
                }
                else
                {
                    point.ClearXMm();
                }
            }
        }

        /// <summary>Distance from the plate's centre away from the front; null when it is not set.</summary>
        public Length? Y
        {
            get => point.HasYMm ? UnitsNet.Length.FromMillimeters(point.YMm) : null;
            set
            {
                if (value is { } given)
                {
                    point.YMm = given.Millimeters;
                }
                else
                {
                    point.ClearYMm();
                }
            }
        }

        /// <summary>Height over the table; null when it is not set.</summary>
        public Length? Z
        {
            get => point.HasZMm ? UnitsNet.Length.FromMillimeters(point.ZMm) : null;
            set
            {
                if (value is { } given)
                {
                    point.ZMm = given.Millimeters;
                }
                else
                {
                    point.ClearZMm();
                }
            }
        }
    }

    extension(Pose pose)
    {
        /// <summary>Turn about the line from position to aim point; null when it is not set.</summary>
        public Angle? Roll
        {
            get => pose.HasRollDeg ? UnitsNet.Angle.FromDegrees(pose.RollDeg) : null;
            set
            {
                if (value is { } given)
                {
                    pose.RollDeg = given.Degrees;
                }
                else
                {
                    pose.ClearRollDeg();
                }
            }
        }
    }

    extension(DiscSource source)
    {
        /// <summary>Diameter of the disc; null when it is not set.</summary>
        public Length? Diameter
        {
            get => source.HasDiameterMm ? UnitsNet.Length.FromMillimeters(source.DiameterMm) : null;
            set
            {
                if (value is { } given)
                {
                    source.DiameterMm = given.Millimeters;
                }
                else
                {
                    source.ClearDiameterMm();
                }
            }
        }
    }

    extension(RectangleSource source)
    {
        /// <summary>Width of the rectangle; null when it is not set.</summary>
        public Length? Width
        {
            get => source.HasWidthMm ? UnitsNet.Length.FromMillimeters(source.WidthMm) : null;
            set
            {
                if (value is { } given)
                {
                    source.WidthMm = given.Millimeters;
                }
                else
                {
                    source.ClearWidthMm();
                }
            }
        }

        /// <summary>Height of the rectangle; null when it is not set.</summary>
        public Length? Height
        {
            get => source.HasHeightMm ? UnitsNet.Length.FromMillimeters(source.HeightMm) : null;
            set
            {
                if (value is { } given)
                {
                    source.HeightMm = given.Millimeters;
                }
                else
                {
                    source.ClearHeightMm();
                }
            }
        }
    }

    extension(PolygonSource source)
    {
        /// <summary>Width across flats; null when it is not set.</summary>
        public Length? AcrossFlats
        {
            get => source.HasAcrossFlatsMm ? UnitsNet.Length.FromMillimeters(source.AcrossFlatsMm) : null;
            set
            {
                if (value is { } given)
                {
                    source.AcrossFlatsMm = given.Millimeters;
                }
                else
                {
                    source.ClearAcrossFlatsMm();
                }
            }
        }
    }

    extension(SourceCalibration calibration)
    {
        /// <summary>Luminance of the face; null when it is not set.</summary>
        public Luminance? Luminance
        {
            get => calibration.HasLuminanceCdPerM2 ? UnitsNet.Luminance.FromCandelasPerSquareMeter(calibration.LuminanceCdPerM2) : null;
            set
            {
                if (value is { } given)
                {
                    calibration.LuminanceCdPerM2 = given.CandelasPerSquareMeter;
                }
                else
                {
                    calibration.ClearLuminanceCdPerM2();
                }
            }
        }
    }
}
