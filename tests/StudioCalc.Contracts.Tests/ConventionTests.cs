using System.Text.RegularExpressions;
using Google.Api;
using Google.Protobuf.Reflection;

namespace StudioCalc.Contracts.Tests;

/// <summary>What every file of the contract keeps to.</summary>
public sealed partial class ConventionTests
{
    private static readonly string[] UnitSuffixes =
    [
        "_mm", "_um", "_s", "_lx", "_lx_s", "_cd_per_m2", "_deg", "_stops", "_j", "_celsius", "_g", "_k", "_m_per_s",
        "_w_per_m2_k", "_w_per_m_k", "_j_per_kg_k", "_kg_per_m3", "_hz", "_mired", "_per_mm",

        "_w", "_v", "_a", "_mb", "_gb", "_mb_per_s", "_mbit_per_s",

        // From 0 to 1.
        "_share", "_shares",
    ];

    // Plain numbers, and constants whose unit depends on the receptor or is told by the comment.
    private static readonly string[] WithoutUnit =
    [
        "f_number", "speed", "reflected_constant", "incident_constant", "calibration_constant", "key_to_fill",
        "key_plus_fill_to_fill", "distance_factor", "rest_distance_factor", "optical_density", "factor", "share",
        "error_gain", "value",
        "exposure_factor", "magnification",
        "pupil_magnification", "effective_f_number", "lens_factor", "exposure_index", "transmittance", "vignetting",
        "reflectance", "meter_reflectance", "mid_tone_reflectance", "share_of_clipping", "frames_per_charge", "charges", "banding",
        "tolerated_banding", "camera_shake_factor",
        "share_of_frame_height", "importance", "pixels",

        // Framing, stacks, keepers and sensor formats.
        "width", "height", "near_to_far_size", "wanted_magnification", "crop_factor",
        "keep_chance", "chance_of_frames", "ratio_factor",

        // Windows, bounce and shadow.
        "covered_reflectance", "configuration_factor", "luminance_ratio", "shaded_share_error",

        // Freshness.
        "relative_humidity", "wetness", "biot", "share_left", "hold_chance", "all_hold_chance", "all_hold_chance_error",

        // Plate view.
        "main_in_front", "main_large", "components_show", "insides_open", "depth_fits", "weight", "score", "scores",
        "refractive_index", "share_at_centre_elevation",

        // Shoot plan.
        "plate_chance", "power_factor", "confidence", "reached_chance", "longest_factor", "shots_per_hour", "mean_shots_per_hour", "keepers_per_hour",
        "frames_per_hour", "mean_finished_shots", "mean_missed_shots", "budget_break_chance", "budget_break_chance_error",
        "mean_made_again", "mean_given_up", "bottleneck_shots_per_hour", "mean_tries", "low", "high",

        // Metres times f-number: no length.
        "guide_number_m", "first_guide_number_m",
    ];

    private static readonly IReadOnlyList<MessageDescriptor> Messages = [.. Contract.Files.SelectMany(file => file.MessageTypes)];

    private static readonly HashSet<MessageDescriptor> Requests =
        Reachable(Contract.Services.SelectMany(service => service.Methods).Select(method => method.InputType));

    private static IEnumerable<FieldDescriptor> Fields => Messages.SelectMany(message => message.Fields.InDeclarationOrder());

    private static IEnumerable<FieldDescriptor> RequestFields => Requests.SelectMany(message => message.Fields.InDeclarationOrder());

    private static IEnumerable<MethodDescriptor> Methods => Contract.Services.SelectMany(service => service.Methods);

    [Fact]
    public void EveryNumberWithAFraction_NamesItsUnit() => Assert.Empty(Fields
        .Where(field => field.FieldType == FieldType.Double)
        .Where(field => !Array.Exists(UnitSuffixes, suffix => field.Name.EndsWith(suffix, StringComparison.Ordinal)))
        .Where(field => !WithoutUnit.Contains(field.Name))
        .Select(field => field.FullName));

    [Fact]
    public void ListedNamesWithoutUnit_AreAllInUse() => Assert.Empty(
        WithoutUnit.Except(Fields.Where(field => field.FieldType == FieldType.Double).Select(field => field.Name)));

    [Fact]
    public void NoField_Has64BitsOrSinglePrecision() => Assert.Empty(Fields
        .Where(field => field.FieldType is FieldType.Int64 or FieldType.UInt64 or FieldType.SInt64 or FieldType.Fixed64
            or FieldType.SFixed64 or FieldType.Float)
        .Select(field => field.FullName));

    [Fact]
    public void EveryRequestValue_CanBeToldFromAMissingOne() => Assert.Empty(RequestFields
        .Where(field => !field.HasPresence && !field.IsRepeated && field.FieldType != FieldType.Bool)
        .Select(field => field.FullName));

    [Fact]
    public void EveryRequestNumber_HasBoundsOnBothSides() => Assert.Empty(RequestFields
        .Where(field => field.FieldType == FieldType.Double || field is { FieldType: FieldType.Message, MessageType.FullName: "google.protobuf.Duration" })
        .Where(field => (field.IsRepeated ? FieldRules.Of(field).Items : FieldRules.Of(field)) is not { Min: not null, Max: not null })
        .Select(field => field.FullName));

    [Fact]
    public void EveryRequestEnum_LetsOnlyNamedValuesIn() => Assert.Empty(RequestFields
        .Where(field => field.FieldType == FieldType.Enum)
        .Where(field => (field.IsRepeated ? FieldRules.Of(field).Items : FieldRules.Of(field)) is not { DefinedOnly: true, NotZero: true })
        .Select(field => field.FullName));

    [Fact]
    public void EveryRequestTextAndList_HasALimit() => Assert.Empty(RequestFields
        .Where(field => (field.FieldType == FieldType.String || field.IsRepeated) && FieldRules.Of(field).MaxCount is null)
        .Select(field => field.FullName));

    [Fact]
    public void EveryRequestOneof_IsRequired() => Assert.Empty(Requests.SelectMany(message => message.Oneofs)
        .Where(oneof => !oneof.IsSynthetic && !FieldRules.IsRequired(oneof)).Select(oneof => oneof.FullName));

    [Fact]
    public void EveryPartOfTheContract_HasAComment() => Assert.Empty(Everything()
        .Where(part => ContractComments.Of(part).Length == 0).Select(part => part.FullName));

    [Fact]
    public void EveryRequestFieldsComment_SaysWhetherItIsRequired() => Assert.Empty(RequestFields
        .Where(field => field.RealContainingOneof is null && !field.IsRepeated && field.FieldType != FieldType.Bool)
        .Where(field => !ContractComments.Of(field).StartsWith(FieldRules.Of(field).Required ? "Required." : "Optional.", StringComparison.Ordinal))
        .Select(field => field.FullName));

    [Fact]
    public void EveryRequestNumbersComment_NamesTheBoundsOfItsAnnotation() => Assert.Empty(RequestFields
        .Where(field => field.FieldType == FieldType.Double)
        .Where(field => (field.IsRepeated ? FieldRules.Of(field).Items! : FieldRules.Of(field)) is var rules
            && !Numbers(ContractComments.Of(field)).IsSupersetOf([rules.Min!.Value, rules.Max!.Value]))
        .Select(field => field.FullName));

    [Fact]
    public void EveryEnum_StartsWithUnspecified() => Assert.Empty(Contract.Files.SelectMany(file => file.EnumTypes)
        .Where(type => type.FindValueByNumber(0)?.Name.EndsWith("_UNSPECIFIED", StringComparison.Ordinal) != true)
        .Select(type => type.FullName));

    [Fact]
    public void EveryMethod_HasNoSideEffects() => Assert.Empty(Methods
        .Where(method => method.GetOptions()?.IdempotencyLevel != MethodOptions.Types.IdempotencyLevel.NoSideEffects)
        .Select(method => method.FullName));

    [Fact]
    public void EveryMethod_HasItsOwnRequestAndResponse() => Assert.Empty(Methods
        .Where(method => method.InputType.Name != method.Name + "Request" || method.OutputType.Name != method.Name + "Response")
        .Select(method => method.FullName));

    [Fact]
    public void EveryMethodThatAnswersWithAStream_HasNoRoute() => Assert.Empty(Methods
        .Where(method => method.IsServerStreaming && method.GetOptions().GetExtension(AnnotationsExtensions.Http) is not null)
        .Select(method => method.FullName));

    [Fact]
    public void EveryMethod_TakesOneRequest() => Assert.Empty(Methods.Where(method => method.IsClientStreaming).Select(method => method.FullName));

    [Fact]
    public void EveryOtherMethod_IsReachedByHttpUnderItsSubject()
    {
        foreach (var method in Methods.Where(method => !method.IsServerStreaming))
        {
            var rule = method.GetOptions().GetExtension(AnnotationsExtensions.Http);
            Assert.NotNull(rule);
            var rules = rule.AdditionalBindings.Prepend(rule).ToList();
            var subject = method.Service.Name[..^"Service".Length];
            Assert.All(rules, one => Assert.StartsWith(
                "/v1/" + char.ToLowerInvariant(subject[0]) + subject[1..], one.Get.Length > 0 ? one.Get : one.Post, StringComparison.Ordinal));
            var hasList = Reachable([method.InputType]).SelectMany(message => message.Fields.InDeclarationOrder()).Any(field => field.IsRepeated);
            Assert.Equal(!hasList, rules.Exists(one => one.Get.Length > 0));
            var takesValues = method.InputType.Fields.InDeclarationOrder().Count > 0;
            Assert.Equal(takesValues, rules.Exists(one => one.Post.Length > 0 && one.Body == "*"));
            Assert.Equal(rules.Count, rules.Select(one => one.PatternCase).Distinct().Count());
        }
    }

    private static HashSet<MessageDescriptor> Reachable(IEnumerable<MessageDescriptor> roots)
    {
        var found = new HashSet<MessageDescriptor>();
        var left = new Stack<MessageDescriptor>(roots);
        while (left.TryPop(out var message))
        {
            if (found.Add(message))
            {
                foreach (var field in message.Fields.InDeclarationOrder().Where(field =>
                    field.FieldType == FieldType.Message && field.MessageType.File.Package == "studiocalc.v1"))
                {
                    left.Push(field.MessageType);
                }
            }
        }

        return found;
    }

    private static IEnumerable<IDescriptor> Everything() =>
        Messages.Concat<IDescriptor>(Fields)
            .Concat(Contract.Files.SelectMany(file => file.EnumTypes))
            .Concat(Contract.Files.SelectMany(file => file.EnumTypes).SelectMany(type => type.Values))
            .Concat(Contract.Services)
            .Concat(Methods);

    private static HashSet<double> Numbers(string comment) =>
        [.. Number().Matches(comment).Select(match => double.Parse(match.Value, System.Globalization.CultureInfo.InvariantCulture))];

    [GeneratedRegex(@"-?[0-9]+(\.[0-9]+)?", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Number();
}
