using StudioCalc.Cli;

return await new CommandLine(Console.In, Console.Out, Console.Error).RunAsync(args).ConfigureAwait(false);
