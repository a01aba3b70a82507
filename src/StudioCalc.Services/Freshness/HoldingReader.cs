using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Where the parts of a component stand in a request.</summary>
internal sealed record HoldingPaths(FieldPath Item, FieldPath EndsAt, FieldPath Air);

/// <summary>Reads components with what ends their look. What cannot be is noted, and the component is then null.</summary>
internal static class HoldingReader
{
    private const double UsualHazeUm = 1;
    private const double UsualBeadsUm = 10;

    public static HoldingRead? ReadHolding(
        this RequestContext context, FoodItem item, SetPoint? endsAt, RoomAir? air, HoldingPaths paths)
    {
        var isCooling = item.KindCase is FoodItem.KindOneofCase.Liquid or FoodItem.KindOneofCase.Film or FoodItem.KindOneofCase.Piece;
        if (!isCooling && endsAt is not null)
        {
            context.Violations.Add(paths.EndsAt.ToString(), RefusalReason.Conflict,
                "Belongs to a liquid, a film or a piece; what ends the look of the others is told with them.");
        }

        return item.KindCase switch
        {
            FoodItem.KindOneofCase.IceCream => context.ReadScoop(item, air, paths),
            FoodItem.KindOneofCase.Glass => context.ReadGlass(item.Glass, air, paths),
            FoodItem.KindOneofCase.Decay => context.ReadDecay(item.Decay, paths.Item[FoodItem.DecayFieldNumber]),
            FoodItem.KindOneofCase.Leaves => context.ReadLeaves(item.Leaves, air, paths),
            FoodItem.KindOneofCase.ProfileId => context.ReadProfile(item.ProfileId, paths.Item[FoodItem.ProfileIdFieldNumber]),
            FoodItem.KindOneofCase.OwnWindow => context.ReadWindow(item.OwnWindow, paths.Item[FoodItem.OwnWindowFieldNumber]),
            _ => context.ReadCooling(item, endsAt, air, paths),
        };
    }

    /// <summary>Reads food whose temperature is followed, with its room; null after noting a bad field.</summary>
    public static (BodyRead Food, Room Room)? ReadFollowed(this RequestContext context, FoodItem item, RoomAir? air, FieldPath itemPath, FieldPath airPath)
    {
        var food = item.KindCase switch
        {
            FoodItem.KindOneofCase.Liquid => context.Read(item.Liquid, itemPath[FoodItem.LiquidFieldNumber]),
            FoodItem.KindOneofCase.Film => context.Read(item.Film, itemPath[FoodItem.FilmFieldNumber]),
            FoodItem.KindOneofCase.Piece => context.Read(item.Piece, itemPath[FoodItem.PieceFieldNumber]),
            _ => context.Read(item.IceCream, itemPath[FoodItem.IceCreamFieldNumber]),
        };
        var room = context.ReadRoom(air, BodyReader.HasVapour(item), airPath);
        return food is not null && room is not null && context.CanBeFollowed(food, room, itemPath) ? (food, room) : null;
    }

    private static bool CanBeFollowed(this RequestContext context, BodyRead food, Room room, FieldPath path)
    {
        var canBe = FoodCourse.Of(food.Body, room).CanBeFollowed;
        if (!canBe)
        {
            context.Violations.Add(path.ToString(), RefusalReason.OutOfRange,
                "It takes the temperature of its plate or room within some hundredths of a second, faster than it can be followed: "
                + "look for a figure that is far too small, such as the mass or the thickness, or far too large, such as a coefficient.");
        }

        return canBe;
    }

    /// <summary>Reads a set point for food; null after noting a bad field.</summary>
    public static SetPointRead? Read(this RequestContext context, SetPoint endsAt, FoodBody body, Room room, FieldPath path)
    {
        SetPointRead read;
        if (endsAt.ValueCase == SetPoint.ValueOneofCase.ProfileId)
        {
            if (endsAt.HasSpreadK)
            {
                context.Violations.Add(path[SetPoint.SpreadKFieldNumber].ToString(), RefusalReason.Conflict,
                    "A profile has its own spread: leave it out, or give a temperature.");
                return null;
            }

            if (context.Find(endsAt.ProfileId, path[SetPoint.ProfileIdFieldNumber]) is not { } profile)
            {
                return null;
            }

            if (profile.SetPoint is not { } band)
            {
                context.Violations.Add(path[SetPoint.ProfileIdFieldNumber].ToString(), RefusalReason.Conflict,
                    "This profile has no set point: it is a window or a decay of its own. Name it as the item's profile instead.");
                return null;
            }

            read = new(band, profile.SourceKind, $"set point of {profile.Id}: {profile.Source}");
        }
        else
        {
            var towardsStart = body.StartCelsius >= endsAt.SurfaceCelsius ? endsAt.SpreadK : -endsAt.SpreadK;
            read = new(
                new(endsAt.SurfaceCelsius + towardsStart, endsAt.SurfaceCelsius, endsAt.SurfaceCelsius - towardsStart), Maths.SourceKind.Given, "set point as given");
        }

        var (low, high) = FoodCourse.Range(body, room);
        if (read.Band.LikelyCelsius >= low && read.Band.LikelyCelsius <= high)
        {
            return read;
        }

        var field = endsAt.ValueCase == SetPoint.ValueOneofCase.ProfileId ? SetPoint.ProfileIdFieldNumber : SetPoint.SurfaceCelsiusFieldNumber;
        context.Violations.Add(path[field].ToString(), RefusalReason.OutOfRange, FormattableString.Invariant(
            $"Its set point of {read.Band.LikelyCelsius:0.##} °C lies outside all temperatures that this food takes, from {low:0.##} to {high:0.##} °C."));
        return null;
    }

    private static CoolingRead? ReadCooling(this RequestContext context, FoodItem item, SetPoint? endsAt, RoomAir? air, HoldingPaths paths)
    {
        var followed = context.ReadFollowed(item, air, paths.Item, paths.Air);
        if (endsAt is null)
        {
            context.Violations.Add(paths.EndsAt.ToString(), RefusalReason.Required,
                "Give the surface temperature at which the look ends, or a profile that has one.");
            return null;
        }

        return followed is var (food, room) && context.Read(endsAt, food.Body, room, paths.EndsAt) is { } set
            ? new(food, room, set)
            : null;
    }

    private static ScoopRead? ReadScoop(this RequestContext context, FoodItem item, RoomAir? air, HoldingPaths paths) =>
        context.ReadFollowed(item, air, paths.Item, paths.Air) is var (food, room)
            ? new(food, room, BodyReader.GlossLostOf(item.IceCream), item.IceCream.HasGlossLostCelsius)
            : null;

    private static GlassRead? ReadGlass(this RequestContext context, ColdGlass glass, RoomAir? air, HoldingPaths paths)
    {
        var haze = glass.HasHazeUm ? glass.HazeUm : UsualHazeUm;
        var beads = glass.HasBeadsUm ? glass.BeadsUm : Math.Max(UsualBeadsUm, haze);
        if (beads < haze)
        {
            context.Violations.Add(paths.Item[FoodItem.GlassFieldNumber][ColdGlass.BeadsUmFieldNumber].ToString(), RefusalReason.Conflict,
                FormattableString.Invariant($"Must not be below the film of a haze, {haze:0.##} µm."));
        }

        return context.ReadRoom(air, hasVapour: true, paths.Air) is { } room && beads >= haze
            ? new(room, glass.SurfaceCelsius, haze, beads, glass.HasHazeUm)
            : null;
    }

    private static DecayRead? ReadDecay(this RequestContext context, FirstOrderDecay decay, FieldPath path)
    {
        var share = decay.HasShareLeft ? decay.ShareLeft : 0.5;
        switch (decay.RateCase)
        {
            case FirstOrderDecay.RateOneofCase.HalfLife:
                var half = decay.HalfLife.ToSeconds();
                return new(new(half, half, half), share, Maths.SourceKind.Given, "half-life as given");
            case FirstOrderDecay.RateOneofCase.Reading:
                var read = FirstOrder.HalfLifeS(decay.Reading.After.ToSeconds(), decay.Reading.ShareLeft);
                return new(new(read, read, read), share, Maths.SourceKind.Given, "half-life from the share left as given");
            default:
                var at = path[FirstOrderDecay.ProfileIdFieldNumber];
                if (context.Find(decay.ProfileId, at) is not { } profile)
                {
                    return null;
                }

                if (profile.HalfLife is { } span)
                {
                    return new(span, decay.HasShareLeft ? share : profile.ShareLeft ?? share, profile.SourceKind, $"{profile.Id}: {profile.Source}", profile.IsWait);
                }

                context.Violations.Add(at.ToString(), RefusalReason.Conflict, "This profile has no half-life.");
                return null;
        }
    }

    private static LeavesRead? ReadLeaves(this RequestContext context, LeavesOnFood leaves, RoomAir? air, HoldingPaths paths)
    {
        var practice = HoldingProfiles.Find(leaves.Hardy ? "hardy-herbs-on-hot-food" : "herbs-on-hot-food")
            ?? throw new InvalidOperationException("The catalogue lacks the leaves.");
        if (leaves.UnderCase == LeavesOnFood.UnderOneofCase.SurfaceCelsius)
        {
            return new(leaves.SurfaceCelsius, null, null, practice);
        }

        var under = BodyReader.Under(leaves.Food);
        var at = paths.Item[FoodItem.LeavesFieldNumber][LeavesOnFood.FoodFieldNumber];
        var food = under.KindCase switch
        {
            FoodItem.KindOneofCase.Liquid => context.Read(under.Liquid, at[FoodUnderLeaves.LiquidFieldNumber]),
            FoodItem.KindOneofCase.Film => context.Read(under.Film, at[FoodUnderLeaves.FilmFieldNumber]),
            _ => context.Read(under.Piece, at[FoodUnderLeaves.PieceFieldNumber]),
        };
        return context.ReadRoom(air, BodyReader.HasVapour(under), paths.Air) is { } room && food is not null && context.CanBeFollowed(food, room, at)
            ? new(null, food, room, practice)
            : null;
    }

    private static WindowRead? ReadProfile(this RequestContext context, string id, FieldPath path)
    {
        if (context.Find(id, path) is not { } profile)
        {
            return null;
        }

        if (profile.Window is { } window)
        {
            return new(window, profile.SourceKind, $"{profile.Id}: {profile.Source}", profile.IsWait);
        }

        context.Violations.Add(path.ToString(), RefusalReason.Conflict, profile.SetPoint is null
            ? "This profile is a decay: name it as decay.profile_id."
            : "This profile has a set point, from which a time is computed: describe the food and name it in ends_at.");
        return null;
    }

    private static WindowRead? ReadWindow(this RequestContext context, OwnWindow window, FieldPath path)
    {
        var likely = window.Likely.ToSeconds();
        var pessimistic = window.Pessimistic?.ToSeconds() ?? likely;
        var optimistic = window.Optimistic?.ToSeconds() ?? likely;
        if (pessimistic > likely)
        {
            context.Violations.Add(path[OwnWindow.PessimisticFieldNumber].ToString(), RefusalReason.Conflict, "Must not be above the likely time.");
        }

        if (optimistic < likely)
        {
            context.Violations.Add(path[OwnWindow.OptimisticFieldNumber].ToString(), RefusalReason.Conflict, "Must not be below the likely time.");
        }

        return new(new(pessimistic, likely, optimistic), Maths.SourceKind.Given, "window as given");
    }

    private static Maths.HoldingProfile? Find(this RequestContext context, string id, FieldPath path)
    {
        if (HoldingProfiles.Find(id) is { } profile)
        {
            return profile;
        }

        context.Violations.Add(path.ToString(), RefusalReason.UnknownMark,
            "The catalogue has no such profile; ListHoldingProfiles tells the ids that there are.");
        return null;
    }
}
