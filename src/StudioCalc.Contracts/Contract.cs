using Google.Protobuf.Reflection;
using StudioCalc.V1;

namespace StudioCalc.Contracts;

/// <summary>The whole contract: its files, services and messages.</summary>
public static class Contract
{
    /// <summary>The domain in every <c>google.rpc.ErrorInfo</c>.</summary>
    public const string ErrorDomain = "studiocalc";

    /// <summary>The files of the contract.</summary>
    public static IReadOnlyList<FileDescriptor> Files { get; } =
    [
        AnswerReflection.Descriptor,
        CameraReflection.Descriptor,
        CapabilitiesReflection.Descriptor,
        DepthOfFieldReflection.Descriptor,
        ExposureReflection.Descriptor,
        FillPlacementReflection.Descriptor,
        FreshnessReflection.Descriptor,
        GeometryReflection.Descriptor,
        LightReflection.Descriptor,
        LightingRatioReflection.Descriptor,
        OpticsReflection.Descriptor,
        PlateViewReflection.Descriptor,
        ShootPlanReflection.Descriptor,
    ];

    /// <summary>The services of the contract.</summary>
    public static IReadOnlyList<ServiceDescriptor> Services { get; } = [.. Files.SelectMany(file => file.Services)];

    /// <summary>The name under which generated code calls a method, such as <c>/studiocalc.v1.ExposureService/EvaluateExposure</c>.</summary>
    public static string FullMethodName(MethodDescriptor method)
    {
        ArgumentNullException.ThrowIfNull(method);
        return $"/{method.Service.FullName}/{method.Name}";
    }

    /// <summary>The subject that a service answers for, such as <c>LightingRatio</c>.</summary>
    public static string SubjectOf(ServiceDescriptor service)
    {
        ArgumentNullException.ThrowIfNull(service);
        return service.Name[..^"Service".Length];
    }

    /// <summary>What a call does to its subject: its name without the subject's, such as <c>Evaluate</c> or <c>BalanceFill</c>.</summary>
    public static string VerbOf(MethodDescriptor method)
    {
        ArgumentNullException.ThrowIfNull(method);
        return method.Name.Replace(SubjectOf(method.Service), "", StringComparison.Ordinal);
    }
}
