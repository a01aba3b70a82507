using Google.Protobuf.Reflection;

namespace StudioCalc.Cli;

/// <summary>What an option takes.</summary>
internal enum OptionKind
{
    /// <summary>Nothing: it only has parts.</summary>
    Group,

    /// <summary>One value.</summary>
    Value,

    /// <summary>One value each time it is given.</summary>
    List,

    /// <summary>The short text of a shape, which has parts too.</summary>
    Shape,

    /// <summary>Nothing: to be there is all it says.</summary>
    Flag,
}

/// <summary>A field of a request message as an option.</summary>
/// <param name="Name">The option, such as <c>--camera.sync-speed</c>.</param>
/// <param name="Path">The field in the contract's names, such as <c>camera.sync_speed</c>.</param>
/// <param name="Field">The field.</param>
/// <param name="Index">Which item of a list of messages it is, from 0; null elsewhere.</param>
/// <param name="Parent">The option that it is a part of; null at the top of the request.</param>
internal sealed record OptionSpec(string Name, string Path, FieldDescriptor Field, int? Index, OptionSpec? Parent)
{
    public OptionKind Kind { get; } = KindOf(Field);

    public IReadOnlyList<OptionSpec> Parts { get; set; } = [];

    /// <summary>Whether it may be typed.</summary>
    public bool IsTyped => Kind != OptionKind.Group;

    /// <summary>This option and all its parts, itself first.</summary>
    public IEnumerable<OptionSpec> All => Parts.SelectMany(part => part.All).Prepend(this);

    /// <summary>The choice that it belongs to; null when it is no member of one.</summary>
    public OneofDescriptor? Choice => Field.RealContainingOneof;

    private static OptionKind KindOf(FieldDescriptor field) =>
        OptionTree.IsText(field) ? field.IsRepeated ? OptionKind.List : OptionKind.Value
        : Cli.Shape.Of(field.MessageType) is not null ? OptionKind.Shape
        : field.MessageType.Fields.InFieldNumberOrder().Count == 0 ? OptionKind.Flag
        : OptionKind.Group;
}
