namespace StudioCalc.Cli.Tests;

public sealed class QuantityTests
{
    [Theory]
    [InlineData("mm", "1.2 m", 1200)]
    [InlineData("mm", "40mm", 40)]
    [InlineData("mm", "4 ft", 1219.2)]
    [InlineData("mm", "5 ft 7 in", 1701.8)]
    [InlineData("mm", "5'7\"", 1701.8)]
    [InlineData("mm", "5 ft 7 1/2 in", 1714.5)]
    [InlineData("mm", "-5 ft 7 in", -1701.8)]
    [InlineData("mm", ".5 cm", 5)]
    [InlineData("mm", "1e2 mm", 100)]
    [InlineData("um", "12 um", 12)]
    [InlineData("um", "12 μm", 12)]
    [InlineData("m", "190 feet", 57.912)]
    [InlineData("s", "1/125 s", 1 / 125.0)]
    [InlineData("s", "2 min 30 s", 150)]
    [InlineData("s", "1h20min", 4800)]
    [InlineData("s", "8 ms", 0.008)]
    [InlineData("stops", "-1 stop", -1)]
    [InlineData("stops", "-1/3 stop", -1 / 3.0)]
    [InlineData("stops", "+0.7 stops", 0.7)]
    [InlineData("stops", "−1 1/3 stops", -4 / 3.0)]
    [InlineData("stops", "12 EV", 12)]
    [InlineData("lx", "20 lx", 20)]
    [InlineData("lx", "2 klx", 2000)]
    [InlineData("lx", "100 fc", 1076.39104167)]
    [InlineData("lx_s", "3 lx·s", 3)]
    [InlineData("cd_per_m2", "80 cd/m²", 80)]
    [InlineData("cd_per_m2", "80 cd/m2", 80)]
    [InlineData("deg", "21°", 21)]
    [InlineData("deg", "1 rad", 57.29577951)]
    [InlineData("j", "0.5 kJ", 500)]
    [InlineData("j", "500 Ws", 500)]
    [InlineData("celsius", "68 °F", 20)]
    [InlineData("celsius", "68 F", 20)]
    [InlineData("celsius", "-40 F", -40)]
    [InlineData("celsius", "293.15 K", 20)]
    [InlineData("g", "2 lb", 907.18474)]
    [InlineData("k", "5600 K", 5600)]
    [InlineData("mired", "-81 mired", -81)]
    [InlineData("m_per_s", "36 km/h", 10)]
    [InlineData("hz", "50 Hz", 50)]
    [InlineData("per_s", "3 /s", 3)]
    [InlineData("stops_per_h", "-0.5 stops/h", -0.5)]
    [InlineData("w_per_m2_k", "12 W/(m² K)", 12)]
    [InlineData("w_per_m2_k", "12 W/m2K", 12)]
    [InlineData("w_per_m_k", "0.6 W/(m K)", 0.6)]
    [InlineData("j_per_kg_k", "4.18 kJ/(kg K)", 4180)]
    [InlineData("kg_per_m3", "1050 kg/m3", 1050)]
    [InlineData("kg_per_m3", "0.55 g/cm³", 550)]
    public void Quantity_AsPeopleSayIt_IsReadInTheContractsUnit(string suffix, string text, double expected) =>
        DecimalComma.UnderEach(() => Assert.Equal(expected, (double)ValueText.Read(Fields.Counted(suffix), text), 8));

    [Theory]
    [InlineData("stops", "2", "2 has no unit; write \"2 stops\".")]
    [InlineData("stops", "-1", "-1 has no unit; write \"-1 stop\".")]
    [InlineData("mm", "1200", "1200 has no unit; write \"1200 mm\".")]
    [InlineData("mm", "2 s", "\"s\" is not a unit for length; write mm, cm, m, ft, in or µm, such as \"2 mm\".")]
    [InlineData("k", "68 °F", "\"°F\" is not a unit for kelvins; write K, such as \"68 K\".")]
    [InlineData("k", "20 °C", "\"°C\" is not a unit for kelvins; write K, such as \"20 K\".")]
    [InlineData("mm", "1,2 m", "has a comma; write decimals with a point, such as 1.2")]
    [InlineData("mm", "1,200.5 mm", "has a comma")]
    [InlineData("mm", "1 200 mm", "is not a unit for length")]
    [InlineData("mm", "1'200 mm", "is not a unit for length")]
    [InlineData("mm", "1.200.000 mm", "is not a number with a unit")]
    [InlineData("mm", "7 in 5 ft", "is not a unit for length")]
    [InlineData("mm", "5 ft 7", "is not a unit for length")]
    [InlineData("mm", "5 ft -7 in", "is not a unit for length")]
    [InlineData("mm", "5 m 7 cm", "is not a unit for length")]
    [InlineData("s", "30 s 2 min", "is not a unit for time")]
    [InlineData("s", "NaN s", "is not a number with a unit")]
    [InlineData("s", "Infinity", "is not a number with a unit")]
    [InlineData("s", "1e400 s", "is no number that can be counted with")]
    [InlineData("s", "1/0 s", "is no number that can be counted with")]
    [InlineData("mm", "1e308 m", "is no number that can be counted with")]
    [InlineData("s", "", "is not a number with a unit")]
    [InlineData("s", "s", "is not a number with a unit")]
    [InlineData("stops", "two stops", "is not a number with a unit; write one, such as \"2 stops\"")]
    public void Quantity_ThatCouldMeanAnother_IsRefusedWithTheFix(string suffix, string text, string expected) =>
        DecimalComma.UnderEach(() => Assert.Contains(
            expected, Assert.Throws<FormatException>(() => ValueText.Read(Fields.Counted(suffix), text)).Message, StringComparison.Ordinal));

    [Theory]
    [InlineData("0.5", 0.5)]
    [InlineData("-3", -3)]
    [InlineData("1/3", 1 / 3.0)]
    [InlineData("1E-05", 1e-5)]
    public void Number_WithoutAUnit_IsReadPlainly(string text, double expected) =>
        DecimalComma.UnderEach(() => Assert.Equal(expected, ValueText.Read(Fields.Plain, text)));

    [Theory]
    [InlineData("0,5", "has a comma")]
    [InlineData("50 %", "write one without a unit")]
    [InlineData("4 stops", "write one without a unit")]
    [InlineData("0x10", "write one without a unit")]
    [InlineData("NaN", "is not a plain number")]
    public void Number_WithMoreThanANumber_IsRefused(string text, string expected) =>
        DecimalComma.UnderEach(() => Assert.Contains(
            expected, Assert.Throws<FormatException>(() => ValueText.Read(Fields.Plain, text)).Message, StringComparison.Ordinal));

    [Fact]
    public void Units_OfEveryKind_AreReadAsTheyAreOffered() =>
        Assert.All(UnitSuffix.Kinds, kind => Assert.All(kind.Units, unit => Assert.All(unit.Spellings, spelling =>
            Assert.Equal(unit.To(kind.Units[0], 2), QuantityText.Read($"2 {spelling}", kind, kind.Units[0]), 9))));
}
