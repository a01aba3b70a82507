using System.CommandLine;
using System.Globalization;
using StudioCalc.Photos;
using StudioCalc.V1;

namespace StudioCalc.Cli;

/// <summary>The options by which a person tells what photos do not: sensor and permitted blur.</summary>
internal sealed class PhotoAsk
{
    private static readonly Unit Micrometre = QuantityKind.Length.Find("µm")!;

    public Option<string?> Sensor { get; } = new("--sensor")
    {
        Description = "Width and height of the sensor in mm, such as 36x24. Goes before what files say.",
        HelpName = "36x24",
    };

    public Option<string?> Blur { get; } = new("--permitted-blur.diameter")
    {
        Description = "The blur that passes as sharp, such as \"30 µm\". Without it, or the next, no depth of field is worked out.",
        HelpName = "length",
    };

    public Option<string?> NamedBlur { get; } = new("--permitted-blur.named")
    {
        Description = "The same as a share of the sensor's diagonal.",
        HelpName = string.Join('|', EnumText.Choices(Criterion)),
    };

    public IReadOnlyList<Option> All => [Sensor, Blur, NamedBlur];

    private static Google.Protobuf.Reflection.EnumDescriptor Criterion => PermittedBlur.Descriptor.FindFieldByNumber(PermittedBlur.NamedFieldNumber).EnumType;

    public void AddChecksTo(Command command)
    {
        Check(Sensor, text => SizeOf(text));
        Check(Blur, text => DiameterOf(text));
        Check(NamedBlur, text => EnumText.Read(Criterion, text));
        command.Validators.Add(result =>
        {
            if (result.GetValue(Blur) is not null && result.GetValue(NamedBlur) is not null)
            {
                result.AddError($"{Blur.Name}: cannot stand beside {NamedBlur.Name}; write one of the two.");
            }
        });
    }

    public PhotoOptions Of(ParseResult parsed) => new()
    {
        Sensor = parsed.GetValue(Sensor) is { } size ? SizeOf(size) : null,
        PermittedBlur = parsed.GetValue(Blur) is { } diameter ? new() { DiameterUm = DiameterOf(diameter) }
            : parsed.GetValue(NamedBlur) is { } named ? new() { Named = (BlurCriterion)EnumText.Read(Criterion, named) }
            : null,
    };

    /// <summary>Has an option refuse what its reader refuses.</summary>
    public static void Check(Option<string?> option, Action<string> read) => option.Validators.Add(result =>
    {
        try
        {
            if (result.GetValueOrDefault<string?>() is { } text)
            {
                read(text);
            }
        }
        catch (FormatException error)
        {
            result.AddError($"{option.Name}: {error.Message}");
        }
    });

    private static double DiameterOf(string text) => QuantityText.Read(text, QuantityKind.Length, Micrometre) is var value and >= 0.5 and <= 1000
        ? value
        : throw new FormatException($"\"{text}\" is no blur to be worked with; write one from 0.5 to 1000 µm.");

    private static FrameSize SizeOf(string text)
    {
        var sides = text.Split('x', 'X', '×');
        return sides.Length == 2 && TrySide(sides[0], out var width) && TrySide(sides[1], out var height)
            ? new(width, height)
            : throw new FormatException($"\"{text}\" is no sensor; write width and height in mm, each from 1 to 300, such as 36x24 or 23.5x15.6.");
    }

    private static bool TrySide(string text, out double side) =>
        double.TryParse(text.Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out side) && side is >= 1 and <= 300;
}
