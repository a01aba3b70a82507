using StudioCalc.V1;

namespace StudioCalc.Contracts.Tests;

public sealed class QueryTests
{
    [Fact]
    public void ReadQuery_DottedPaths_FillTheMessage()
    {
        var (message, violations) = Read("settings.aperture.mark=f/5.6&settings.shutterSpeed.time_s=0.5&settings.iso.speed=1e2&scale=STOP_SCALE_HALF&includeWorking=true");
        Assert.Empty(violations);
        Assert.Equal(
            new()
            {
                Settings = new() { Aperture = new() { Mark = "f/5.6" }, ShutterSpeed = new() { TimeS = 0.5 }, Iso = new() { Speed = 100 } },
                Scale = StopScale.Half,
                IncludeWorking = true,
            },
            message);
    }

    [Theory]
    [InlineData("guess=1", "guess", "UNKNOWN_FIELD")]
    [InlineData("settings.guess=1", "settings.guess", "UNKNOWN_FIELD")]
    [InlineData("=1", "(unprintable)", "UNKNOWN_FIELD")]
    [InlineData("settings..mark=1", "settings.(unprintable)", "UNKNOWN_FIELD")]
    [InlineData("lensLossStops=5,6", "lens_loss_stops", "DECIMAL_COMMA")]
    [InlineData("lensLossStops=1.000,5", "lens_loss_stops", "WRONG_TYPE")]
    [InlineData("lensLossStops=NaN", "lens_loss_stops", "OUT_OF_RANGE")]
    [InlineData("lensLossStops=Infinity", "lens_loss_stops", "OUT_OF_RANGE")]
    [InlineData("lensLossStops=-infinity", "lens_loss_stops", "WRONG_TYPE")]
    [InlineData("lensLossStops=", "lens_loss_stops", "WRONG_TYPE")]
    [InlineData("lensLossStops= 1", "lens_loss_stops", "WRONG_TYPE")]
    [InlineData("lensLossStops=1&lens_loss_stops=1", "lens_loss_stops", "DOUBLED_FIELD")]
    [InlineData("settings=1", "settings", "WRONG_TYPE")]
    [InlineData("settings.aperture.mark.x=1", "settings.aperture.mark", "WRONG_TYPE")]
    [InlineData("settings.aperture.mark=8&settings.aperture.fNumber=8", "settings.aperture.f_number", "CONFLICT")]
    [InlineData("light.flash.exposureLxS=8&light.continuous.illuminanceLx=8", "light.continuous", "CONFLICT")]
    [InlineData("settings.aperture.tenths=-1", "settings.aperture.tenths", "WRONG_TYPE")]
    [InlineData("scale=half", "scale", "UNKNOWN_VALUE")]
    [InlineData("includeWorking=1", "include_working", "WRONG_TYPE")]
    public void ReadQuery_WhatDoesNotFit_IsRefusedByPath(string query, string field, string reason) =>
        Assert.Equal([(field, reason)], Read(query).Violations);

    [Fact]
    public void ReadQuery_AListField_SendsToTheBody()
    {
        var violations = new Violations();
        ContractJson.ReadQuery(new BalanceFillRequest(), [new("preference", "BALANCE_VARIABLE_FLASH_POWER")], violations);
        Assert.Equal(("preference", "WRONG_TYPE"), (violations.List[0].Field, violations.List[0].Reason));
    }

    private static (EvaluateExposureRequest Message, List<(string Field, string Reason)> Violations) Read(string query)
    {
        var (message, violations) = (new EvaluateExposureRequest(), new Violations());
        ContractJson.ReadQuery(
            message,
            query.Split('&').Select(pair => pair.Split('=', 2)).Select(pair => KeyValuePair.Create(pair[0], pair[1])),
            violations);
        return (message, [.. violations.List.Select(violation => (violation.Field, violation.Reason))]);
    }
}
