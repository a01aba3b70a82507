namespace StudioCalc.Planning;

/// <summary>What an operation is.</summary>
public enum OperationKind
{
    /// <summary>A stage of a plate.</summary>
    Stage,

    /// <summary>Making the set ready for a shot.</summary>
    Setup,

    /// <summary>Taking a shot's frames.</summary>
    Shoot,

    /// <summary>Approving a shot.</summary>
    Approve,
}

/// <summary>One piece of work of the day.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Block">The block.</param>
/// <param name="Plate">The plate of a stage; 0 otherwise.</param>
/// <param name="Index">The stage of the plate, or the shot of the block.</param>
public readonly record struct Operation(OperationKind Kind, int Block, int Plate, int Index)
{
    /// <summary>A stage.</summary>
    public static Operation Stage(int block, int plate, int stage) => new(OperationKind.Stage, block, plate, stage);

    /// <summary>A shot's setup.</summary>
    public static Operation Setup(int block, int shot) => new(OperationKind.Setup, block, 0, shot);

    /// <summary>A shot's frames.</summary>
    public static Operation Shoot(int block, int shot) => new(OperationKind.Shoot, block, 0, shot);

    /// <summary>A shot's approval.</summary>
    public static Operation Approve(int block, int shot) => new(OperationKind.Approve, block, 0, shot);
}

/// <summary>An operation with its times.</summary>
/// <param name="Operation">Which.</param>
/// <param name="Resource">The resource that it occupies, if any.</param>
/// <param name="Unit">The unit of that resource, from 0.</param>
/// <param name="StartMs">Its start. [ms]</param>
/// <param name="EndMs">Its end. [ms]</param>
public readonly record struct TimedOperation(Operation Operation, int? Resource, int Unit, long StartMs, long EndMs);
