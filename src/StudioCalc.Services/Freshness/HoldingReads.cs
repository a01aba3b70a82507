using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>A component as read, ready to be computed.</summary>
internal abstract record HoldingRead;

/// <summary>Food whose look ends at a temperature of its surface.</summary>
internal sealed record CoolingRead(BodyRead Food, Room Room, SetPointRead EndsAt) : HoldingRead;

/// <summary>Ice cream.</summary>
internal sealed record ScoopRead(BodyRead Food, Room Room, double GlossLostCelsius, bool IsGlossTold) : HoldingRead;

/// <summary>A cold glass.</summary>
internal sealed record GlassRead(Room Room, double SurfaceCelsius, double HazeUm, double BeadsUm, bool AreFilmsTold) : HoldingRead;

/// <summary>A decay of first order.</summary>
internal sealed record DecayRead(Maths.HoldingSpan HalfLife, double ShareLeft, Maths.SourceKind Kind, string Source, bool IsWait = false) : HoldingRead;

/// <summary>Leaves on food of one temperature, or on food that cools.</summary>
internal sealed record LeavesRead(double? SurfaceCelsius, BodyRead? Food, Room? Room, Maths.HoldingProfile Practice) : HoldingRead;

/// <summary>A window taken as it is.</summary>
internal sealed record WindowRead(Maths.HoldingSpan Span, Maths.SourceKind Kind, string Source, bool IsWait = false) : HoldingRead;

/// <summary>The temperature at which a look ends, and how it is known.</summary>
internal sealed record SetPointRead(Maths.TemperatureBand Band, Maths.SourceKind Kind, string Source);
