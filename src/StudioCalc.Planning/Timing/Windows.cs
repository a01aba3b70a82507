namespace StudioCalc.Planning;

/// <summary>Where work fits into open times.</summary>
internal static class Windows
{
    /// <summary>Later than any moment of a day.</summary>
    public const long Never = long.MaxValue / 8;

    /// <summary>The first start, not before a moment, of work that lies inside one open time; never if there is none.</summary>
    public static long Fit(OpenTime[] open, long startMs, long durationMs)
    {
        if (open.Length == 0 || durationMs == 0)
        {
            return startMs;
        }

        foreach (var (from, until) in open)
        {
            var start = Math.Max(startMs, from);
            if (start + durationMs <= until)
            {
                return start;
            }
        }

        return Never;
    }

    /// <summary>The last start, not after a moment, of work that lies inside one open time; minus never if there is none.</summary>
    public static long FitBack(OpenTime[] open, long startMs, long durationMs)
    {
        if (open.Length == 0 || durationMs == 0)
        {
            return startMs;
        }

        for (var i = open.Length - 1; i >= 0; i--)
        {
            var start = Math.Min(startMs, open[i].UntilMs - durationMs);
            if (start >= open[i].FromMs)
            {
                return start;
            }
        }

        return -Never;
    }

    /// <summary>When so much open time has passed since a moment; never if there is not that much.</summary>
    public static long Pass(OpenTime[] open, long startMs, long workMs)
    {
        if (open.Length == 0 || workMs == 0)
        {
            return startMs + workMs;
        }

        foreach (var (from, until) in open)
        {
            var start = Math.Max(startMs, from);
            if (start + workMs <= until)
            {
                return start + workMs;
            }

            workMs -= Math.Max(0, until - start);
        }

        return Never;
    }
}
