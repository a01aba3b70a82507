using StudioCalc.Maths;

namespace StudioCalc.Planning;

/// <summary>Random parts of a quoted day. [ms]</summary>
internal sealed class QuoteDraws(QuoteInput input, (uint, uint) key)
{
    private const uint OfTheDay = uint.MaxValue;
    private const uint SetupIsChanged = 1, SetupChange = 2, Wait = 3;
    private const uint OfAShot = 0x100, Swap = 0, Approval = 1, NewPlate = 2;

    // Tries have the highest bit, then shot, plate and try; the rest of a dish has it not.
    private const uint OfATry = 1u << 31;
    private const int TryShift = 12, PlateShift = 16;

    // Whether a try gives a keeper stands where no time looks for its draws.
    private const uint KeeperDraw = uint.MaxValue;
    private readonly long _betweenBreaksMs = (long)(Guard.Positive(input.HoursBetweenBreaks.Value) * 3_600_000);
    private readonly int _mostTries = (int)Math.Clamp(input.MostTries.Value, 1, 0x1000);

    /// <summary>What does not depend on the dishes, and the length of a break.</summary>
    public (long Fixed, long Break) Fixed(uint replication) =>
        (input.LoadIn.Time.DrawMs(key, replication, OfTheDay, 0)
            + input.FirstSetup.Time.DrawMs(key, replication, OfTheDay, 1)
            + input.Strike.Time.DrawMs(key, replication, OfTheDay, 2),
            input.Break.Time.DrawMs(key, replication, OfTheDay, 3));

    /// <summary>The whole day from its work. (82)</summary>
    public long Length(long workMs, long breakMs) => workMs + workMs / _betweenBreaksMs * breakMs;

    /// <summary>One dish. (81)</summary>
    public long Dish(uint replication, uint dish)
    {
        var sum = input.PlateWait.Time.DrawMs(key, replication, dish, Wait);
        if (dish > 0 && Philox.Uniform(key, (replication, dish, 0, SetupIsChanged)).First < input.SetupShare.Value)
        {
            sum += input.SetupChange.Time.DrawMs(key, replication, dish, SetupChange);
        }

        for (var shot = 1u; shot <= input.ShotsPerDish; shot++)
        {
            sum += Shot(replication, dish, shot * OfAShot);
        }

        return sum;
    }

    private long Shot(uint replication, uint dish, uint part)
    {
        var sum = input.Swap.Time.DrawMs(key, replication, dish, part + Swap) + input.Approval.Time.DrawMs(key, replication, dish, part + Approval);
        for (var plate = 0u; plate < Quote.MostPlates; plate++)
        {
            for (var attempt = 0u; attempt < _mostTries; attempt++)
            {
                var address = OfATry | (part << TryShift) | (plate << PlateShift) | attempt;
                sum += input.Try.Time.DrawMs(key, replication, dish, address);
                if (Philox.Uniform(key, (replication, dish, KeeperDraw, address)).First < input.KeeperChance.Value)
                {
                    return sum;
                }
            }

            sum += plate + 1 < Quote.MostPlates ? input.NewPlate.Time.DrawMs(key, replication, dish, part + NewPlate + (plate << 4)) : 0;
        }

        return sum;
    }
}
