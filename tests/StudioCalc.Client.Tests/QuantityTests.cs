using System.Globalization;
using System.Reflection;
using Google.Protobuf;
using UnitsNet;

namespace StudioCalc.Client.Tests;

public class QuantityTests
{
    /// <summary>Every quantity that a request can be given, found in the kit itself.</summary>
    public static TheoryData<string> Properties => [.. Setters.Keys];

    private static Dictionary<string, MethodInfo> Setters { get; } = typeof(StudioCalcClient).Assembly.GetExportedTypes()
        .Where(type => type.Name.EndsWith("Units", StringComparison.Ordinal))
        .SelectMany(type => type.GetMethods(BindingFlags.Public | BindingFlags.Static))
        .Where(method => method.Name.StartsWith("set_", StringComparison.Ordinal))
        .ToDictionary(method => $"{method.GetParameters()[0].ParameterType.Name}.{method.Name[4..]}", StringComparer.Ordinal);

    [Theory]
    [MemberData(nameof(Properties))]
    public void Quantity_SetReadAndCleared_GoesThroughOneField(string property)
    {
        var set = Setters[property];
        var type = set.GetParameters()[0].ParameterType;
        var get = set.DeclaringType!.GetMethod("get_" + set.Name[4..], [type])!;
        var message = (IMessage)Activator.CreateInstance(type)!;
        Assert.Null(get.Invoke(null, [message]));

        var quantity = Quantity.From(3.5, UnitOf(get.ReturnType));
        set.Invoke(null, [message, quantity]);
        var read = (IQuantity)get.Invoke(null, [message])!;
        Assert.Equal(3.5, (double)read.As(quantity.Unit), 1e-9);
        Assert.Single(message.Descriptor.Fields.InDeclarationOrder(), field => field.HasPresence && field.Accessor.HasValue(message));

        set.Invoke(null, [message, null]);
        Assert.Equal(Activator.CreateInstance(type), message);
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("nb-NO")]
    public void Quantities_UnderADecimalComma_AreTheSame(string culture)
    {
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
        Assert.Equal("""{ "timeS": 0.02 }""", V1.ShutterSpeed.Of(Duration.FromMilliseconds(20)).ToString());
        Assert.Equal("""{ "rollDeg": -1.5 }""", new V1.Pose { Roll = Angle.FromDegrees(-1.5) }.ToString());
    }

    // The base unit of a quantity is the one of the international system.
    private static Enum UnitOf(Type nullable) =>
        ((IQuantity)Activator.CreateInstance(Nullable.GetUnderlyingType(nullable)!)!).QuantityInfo.BaseUnitInfo.Value;
}
