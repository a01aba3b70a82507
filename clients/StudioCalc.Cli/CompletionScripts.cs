using System.CommandLine;

namespace StudioCalc.Cli;

/// <summary>Scripts by which shells complete commands, options and values. Each asks the program itself.</summary>
internal static class CompletionScripts
{
    private static readonly (string Shell, string Script)[] All =
    [
        ("bash", """
            # In ~/.bashrc: eval "$(studiocalc completion bash)"
            _studiocalc() {
                local line="${COMP_LINE:0:COMP_POINT}"
                local word="${line##* }"
                mapfile -t COMPREPLY < <(compgen -W "$(studiocalc "[suggest:${#line}]" "$line" 2>/dev/null)" -- "$word")
            }
            complete -F _studiocalc studiocalc
            """),
        ("zsh", """
            # In ~/.zshrc, after compinit: eval "$(studiocalc completion zsh)"
            _studiocalc() {
                local line="${LBUFFER}"
                local -a found
                found=("${(@f)$(studiocalc "[suggest:${#line}]" "$line" 2>/dev/null)}")
                compadd -a found
            }
            compdef _studiocalc studiocalc
            """),
        ("fish", """
            # In ~/.config/fish/config.fish: studiocalc completion fish | source
            function __studiocalc_complete
                set -l line (commandline -cp)
                studiocalc "[suggest:"(string length -- "$line")"]" "$line" 2>/dev/null
            end
            complete -c studiocalc -f -a "(__studiocalc_complete)"
            """),
        ("powershell", """
            # In $PROFILE: studiocalc completion powershell | Out-String | Invoke-Expression
            Register-ArgumentCompleter -Native -CommandName studiocalc -ScriptBlock {
                param($word, $line, $position)
                $text = $line.ToString().PadRight($position).Substring(0, $position)
                studiocalc "[suggest:$position]" "$text" | Where-Object { $_.StartsWith($word) } | ForEach-Object {
                    [System.Management.Automation.CompletionResult]::new($_, $_, 'ParameterValue', $_)
                }
            }
            """),
    ];

    public static Command Command(TextWriter output)
    {
        var command = new Command("completion", "Prints a script by which a shell completes commands, options and values.");
        foreach (var (shell, script) in All)
        {
            var one = new Command(shell, $"The script for {shell}; its first line says where it goes.");
            one.SetAction(_ => output.WriteLine(script.ReplaceLineEndings("\n")));
            command.Add(one);
        }

        return command;
    }
}
