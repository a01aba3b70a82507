namespace StudioCalc.Drawing;

/// <summary>A box with sides along the axes; Bottom is the lesser of the two heights.</summary>
internal readonly record struct Bounds(double Left, double Bottom, double Right, double Top)
{
    public double Width => Right - Left;

    public double Height => Top - Bottom;

    public double MiddleX => (Left + Right) / 2;

    public double MiddleY => (Bottom + Top) / 2;

    /// <summary>The box around all of them.</summary>
    public static Bounds Around(IEnumerable<Bounds> boxes)
    {
        var all = boxes.ToList();
        return new(all.Min(box => box.Left), all.Min(box => box.Bottom), all.Max(box => box.Right), all.Max(box => box.Top));
    }

    public bool Overlaps(Bounds other) => Left < other.Right && other.Left < Right && Bottom < other.Top && other.Bottom < Top;
}
