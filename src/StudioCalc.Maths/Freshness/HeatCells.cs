namespace StudioCalc.Maths;

/// <summary>A piece of food cut into layers from its core, or its lower face, to the surface that the camera sees.</summary>
/// <param name="Volumes">Volumes of the layers. [m³]</param>
/// <param name="Between">Conductance by unit conductivity between a layer and the next. [m]</param>
/// <param name="SurfaceArea">Area of the surface. [m²]</param>
/// <param name="ToSurface">Conductance by unit conductivity between the last layer and the surface. [m]</param>
/// <param name="ToFace">The same between the first layer and the lower face; 0 for a core.</param>
internal sealed record HeatCells(double[] Volumes, double[] Between, double SurfaceArea, double ToSurface, double ToFace)
{
    /// <summary>What mixes: one layer without resistance.</summary>
    public static HeatCells Mixed(double volume, double area) => new([volume], [], area, double.PositiveInfinity, double.PositiveInfinity);

    /// <summary>A slab from its lower face, or from the middle of one that loses heat on both.</summary>
    public static HeatCells Slab(double thickness, double area, int layers)
    {
        var layer = thickness / layers;
        return new(
            Enumerable.Repeat(layer * area, layers).ToArray(),
            Enumerable.Repeat(area / layer, layers - 1).ToArray(),
            area,
            2 * area / layer,
            2 * area / layer);
    }

    /// <summary>A round piece of unit length from its axis, or a ball from its centre.</summary>
    public static HeatCells Round(double radius, bool isBall, int layers)
    {
        double Area(double r) => isBall ? 4 * Math.PI * r * r : 2 * Math.PI * r;
        double Volume(double r) => isBall ? 4 * Math.PI / 3 * r * r * r : Math.PI * r * r;
        var layer = radius / layers;
        return new(
            Enumerable.Range(0, layers).Select(i => Volume((i + 1) * layer) - Volume(i * layer)).ToArray(),
            Enumerable.Range(1, layers - 1).Select(i => Area(i * layer) / layer).ToArray(),
            Area(radius),
            2 * Area(radius - layer / 4) / layer,
            ToFace: 0);
    }
}
