using StudioCalc.V1;
using UnitsNet;

namespace StudioCalc.Client;

/// <summary>Distances of the contract as lengths in any unit, feet with inches included.</summary>
public static class LengthUnits
{
    extension(FlashFill fill)
    {
        /// <summary>Distance from the flash to the plate; null when it is not set.</summary>
        public Length? Distance
        {
            get => fill.HasDistanceMm ? Length.FromMillimeters(fill.DistanceMm) : null;
            set
            {
                if (value is { } distance)
                {
                    fill.DistanceMm = distance.Millimeters;
                }
                else
                {
                    fill.ClearDistanceMm();
                }
            }
        }
    }

    extension(BalanceRemedy remedy)
    {
        /// <summary>The new distance from the flash to the plate; null when the remedy tells none.</summary>
        public Length? Distance => remedy.HasDistanceMm ? Length.FromMillimeters(remedy.DistanceMm) : null;
    }

    extension(FlashUnit unit)
    {
        /// <summary>Distance from the unit to the subject; null when it is not set.</summary>
        public Length? Distance
        {
            get => unit.HasDistanceMm ? Length.FromMillimeters(unit.DistanceMm) : null;
            set
            {
                if (value is { } distance)
                {
                    unit.DistanceMm = distance.Millimeters;
                }
                else
                {
                    unit.ClearDistanceMm();
                }
            }
        }

        /// <summary>Guide number as the distance that it stands for at f/1; null when it is not set. One in feet, such as 190,
        /// is <c>Length.FromFeet(190)</c>.</summary>
        public Length? GuideNumber
        {
            get => unit.HasGuideNumberM ? Length.FromMeters(unit.GuideNumberM) : null;
            set
            {
                if (value is { } guideNumber)
                {
                    unit.GuideNumberM = guideNumber.Meters;
                }
                else
                {
                    unit.ClearGuideNumberM();
                }
            }
        }

        /// <summary>Width of the face that gives off the light; null when it is not set.</summary>
        public Length? SourceWidth
        {
            get => unit.HasSourceWidthMm ? UnitsNet.Length.FromMillimeters(unit.SourceWidthMm) : null;
            set
            {
                if (value is { } given)
                {
                    unit.SourceWidthMm = given.Millimeters;
                }
                else
                {
                    unit.ClearSourceWidthMm();
                }
            }
        }
    }

    extension(FlashSolution solution)
    {
        /// <summary>Distance of the first unit; null when the answer tells none.</summary>
        public Length? Distance => solution.HasDistanceMm ? Length.FromMillimeters(solution.DistanceMm) : null;

        /// <summary>Guide number of all units together; null when the answer tells none.</summary>
        public Length? GuideNumber => solution.HasGuideNumberM ? Length.FromMeters(solution.GuideNumberM) : null;
    }
}
