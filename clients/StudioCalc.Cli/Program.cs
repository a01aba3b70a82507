using System.Globalization;
using System.Text;
using StudioCalc.Cli;

// The same text on every machine, whatever its country and code page.
CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;
var utf8 = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
if (!Console.IsOutputRedirected)
{
    Console.OutputEncoding = utf8;
}

using var input = new StreamReader(Console.OpenStandardInput(), utf8);
using var output = new StreamWriter(Console.OpenStandardOutput(), utf8);
using var errors = new StreamWriter(Console.OpenStandardError(), utf8) { AutoFlush = true };
var colour = !Console.IsOutputRedirected
    && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"))
    && Environment.GetEnvironmentVariable("TERM") != "dumb";
return await new CommandLine(new(input, output, errors, colour, !Console.IsErrorRedirected)).RunAsync(args).ConfigureAwait(false);
