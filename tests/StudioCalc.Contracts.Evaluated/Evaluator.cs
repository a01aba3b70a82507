using Google.Protobuf.Reflection;
using ProtoValidate;
using StudioCalc.V1;

namespace StudioCalc.Contracts.Evaluated;

/// <summary>Evaluates the annotations of a message with a general evaluator.</summary>
public static class Evaluator
{
    private static readonly Validator Validator = new();

    private static readonly Dictionary<string, MessageDescriptor> Types = new[]
    {
        AnswerReflection.Descriptor, CameraReflection.Descriptor, CapabilitiesReflection.Descriptor, DepthOfFieldReflection.Descriptor,
        FillPlacementReflection.Descriptor, FreshnessReflection.Descriptor,
        ExposureReflection.Descriptor, GeometryReflection.Descriptor, LightReflection.Descriptor, LightingRatioReflection.Descriptor,
        OpticsReflection.Descriptor, PlateViewReflection.Descriptor, ShootPlanReflection.Descriptor,
    }.SelectMany(file => file.MessageTypes).ToDictionary(type => type.FullName, StringComparer.Ordinal);

    /// <summary>The broken rules of a message in its binary form, each as the field's path and the rule's identifier.</summary>
    public static IReadOnlyList<(string Path, string Rule)> BrokenRules(string type, byte[] message) =>
    [
        .. Validator.Validate(Types[type].Parser.ParseFrom(message), false).Violations.Select(violation => (
            string.Join('.', violation.Field.Elements.Select(
                element => element.HasIndex ? $"{element.FieldName}[{element.Index}]" : element.FieldName)),
            violation.RuleId)),
    ];
}
