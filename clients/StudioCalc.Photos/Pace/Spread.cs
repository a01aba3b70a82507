namespace StudioCalc.Photos;

/// <summary>How a number spreads: the middle one, and what a tenth and nine tenths stay below. Between two numbers of the row the
/// value is interpolated in a straight line.</summary>
/// <param name="Count">How many numbers there are.</param>
/// <param name="Median">Half lie below it.</param>
/// <param name="P10">A tenth lies below it.</param>
/// <param name="P90">Nine tenths lie below it.</param>
public sealed record Spread(int Count, double Median, double P10, double P90)
{
    /// <summary>The spread of numbers; null of none.</summary>
    public static Spread? Of(IEnumerable<double> numbers)
    {
        var row = numbers.Order().ToList();
        return row.Count == 0 ? null : new(row.Count, At(row, 0.5), At(row, 0.1), At(row, 0.9));
    }

    private static double At(List<double> row, double share)
    {
        var place = share * (row.Count - 1);
        var below = (int)place;
        return below + 1 == row.Count ? row[below] : row[below] + ((place - below) * (row[below + 1] - row[below]));
    }
}
