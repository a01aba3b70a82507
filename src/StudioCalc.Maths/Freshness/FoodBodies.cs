namespace StudioCalc.Maths;

/// <summary>Food whose temperature is followed.</summary>
/// <param name="StartCelsius">Its temperature at the start. [°C]</param>
public abstract record FoodBody(double StartCelsius);

/// <summary>A liquid that mixes.</summary>
/// <param name="StartCelsius">Its temperature at the start. [°C]</param>
/// <param name="MassG">Its mass. [g]</param>
/// <param name="SurfaceDiameterMm">Diameter of its free surface. [mm]</param>
/// <param name="Properties">Its properties.</param>
/// <param name="Wetness">How much of the surface evaporates, from 0 to 1.</param>
/// <param name="WallCoefficient">Heat through the bowl's wall to the air, by the area of the free surface. [W/(m² K)]</param>
/// <param name="Plate">A bowl or plate with a mass of its own.</param>
public sealed record LiquidBody(
    double StartCelsius, double MassG, double SurfaceDiameterMm, FoodProperties Properties, double Wetness, double WallCoefficient, PlateBody? Plate)
    : FoodBody(StartCelsius);

/// <summary>A thin film on a plate.</summary>
/// <param name="StartCelsius">Its temperature before it touches the plate. [°C]</param>
/// <param name="ThicknessMm">Its thickness. [mm]</param>
/// <param name="DiameterMm">Diameter that it covers. [mm]</param>
/// <param name="Properties">Its properties.</param>
/// <param name="Wetness">How much of the surface evaporates, from 0 to 1.</param>
/// <param name="Plate">The plate.</param>
public sealed record FilmBody(
    double StartCelsius, double ThicknessMm, double DiameterMm, FoodProperties Properties, double Wetness, PlateBody Plate)
    : FoodBody(StartCelsius)
{
    /// <summary>The temperature that film and plate take where they touch, at once.</summary>
    /// <remarks>
    /// <code>
    /// Tc = (b1 T1 + b2 T2) / (b1 + b2),   b = sqrt(k rho c)          (32)
    /// </code>
    /// <para>b: effusivity. Source: standard texts.</para>
    /// </remarks>
    public double ContactCelsius => (Properties.Effusivity * StartCelsius + Plate.Material.Effusivity * Plate.StartCelsius)
        / (Properties.Effusivity + Plate.Material.Effusivity);
}

/// <summary>A solid piece.</summary>
/// <param name="StartCelsius">Its temperature at the start. [°C]</param>
/// <param name="Shape">Its shape.</param>
/// <param name="SizeMm">Thickness of a slab, otherwise diameter. [mm]</param>
/// <param name="Properties">Its properties.</param>
/// <param name="Wetness">How much of the surface evaporates, from 0 to 1.</param>
/// <param name="IsLowerFaceInsulated">Of a slab: whether its lower face gives off no heat.</param>
/// <param name="FaceDiameterMm">Of a slab: diameter of its faces. [mm]</param>
/// <param name="Plate">Of a slab: the plate under it.</param>
public sealed record PieceBody(
    double StartCelsius,
    SolidShape Shape,
    double SizeMm,
    FoodProperties Properties,
    double Wetness,
    bool IsLowerFaceInsulated,
    double FaceDiameterMm,
    PlateBody? Plate)
    : FoodBody(StartCelsius)
{
    /// <summary>The length L of conduction: the whole thickness where one face is on something, otherwise half of it or the radius. [m]</summary>
    public double LengthM => (Shape == SolidShape.Slab && (IsLowerFaceInsulated || Plate is not null) ? SizeMm : SizeMm / 2) / 1000;
}

/// <summary>Ice cream or sorbet as a ball.</summary>
/// <param name="StartCelsius">Its temperature at the start. [°C]</param>
/// <param name="DiameterMm">Its diameter. [mm]</param>
/// <param name="Mix">What it is made of.</param>
/// <param name="Density">Its density with its air. [kg/m³]</param>
/// <param name="Conductivity">Its conductivity. [W/(m K)]</param>
public sealed record ScoopBody(double StartCelsius, double DiameterMm, IceCreamMix Mix, double Density, double Conductivity)
    : FoodBody(StartCelsius)
{
    /// <summary>Its surface. [m²]</summary>
    public double AreaM2 => Math.PI * DiameterMm * DiameterMm / 1e6;

    /// <summary>Its mass. [kg]</summary>
    public double MassKg => Density * Math.PI / 6 * DiameterMm * DiameterMm * DiameterMm / 1e9;
}

/// <summary>A plate under food.</summary>
/// <param name="MassG">Its mass. [g]</param>
/// <param name="StartCelsius">Its temperature at the start. [°C]</param>
/// <param name="DiameterMm">Its diameter. [mm]</param>
/// <param name="Material">What it is made of.</param>
/// <param name="ContactCoefficient">Conductance of the contact. [W/(m² K)]</param>
/// <param name="RoomCoefficient">Heat to the room, by the area of its diameter. [W/(m² K)]</param>
public sealed record PlateBody(
    double MassG, double StartCelsius, double DiameterMm, FoodProperties Material, double ContactCoefficient, double RoomCoefficient)
{
    /// <summary>The plate as one mass under food that touches it over a diameter.</summary>
    /// <param name="contactDiameterMm">That diameter. [mm]</param>
    public PlateNode Under(double contactDiameterMm) => new(
        MassG / 1000 * Material.SpecificHeat,
        ContactCoefficient * Discs.AreaM2(contactDiameterMm),
        RoomCoefficient * Discs.AreaM2(DiameterMm),
        StartCelsius);
}

/// <summary>Areas of round faces.</summary>
internal static class Discs
{
    public static double AreaM2(double diameterMm) => Math.PI / 4 * diameterMm * diameterMm / 1e6;
}
