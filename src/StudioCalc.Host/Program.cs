using StudioCalc.Host;

try
{
    await using var app = StudioCalcHost.Build(args);
    await app.RunAsync();
    return 0;
}
catch (ConfigurationException error)
{
    await Console.Error.WriteLineAsync(error.Message);
    return ConfigurationException.ExitCode;
}
catch (IOException error)
{
    await Console.Error.WriteLineAsync(error.Message);
    return 1;
}
