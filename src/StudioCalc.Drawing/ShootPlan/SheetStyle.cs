using StudioCalc.V1;

namespace StudioCalc.Drawing;

/// <summary>How the page of a call sheet looks: black on white, read by rules, weight and words.</summary>
internal static class SheetStyle
{
    private const string Common = """

        * { box-sizing: border-box; }
        html { background: #fff; color: #000; -webkit-text-size-adjust: 100%; }
        body { margin: 0 auto; max-width: 75rem; padding: 1rem; font: 1rem/1.4 sans-serif; overflow-wrap: break-word; }
        h1 { margin: 0; font-size: 1.7rem; line-height: 1.2; }
        h2 { margin: 2rem 0 .6rem; padding-bottom: .2rem; border-bottom: 2px solid #000; font-size: 1.2rem; }
        h3 { margin: 0 0 .2rem; font-size: 1rem; }
        h3 span { font-weight: normal; }
        p { margin: .2rem 0; }
        ul, ol { margin: .3rem 0; padding-left: 1.5rem; }
        li { margin: .25rem 0; }
        table { width: 100%; border-collapse: collapse; }
        th, td { padding: .25rem .7rem .25rem 0; border-bottom: 1px solid #999; text-align: left; vertical-align: top; }
        th { border-bottom-color: #000; font-size: .85rem; }
        .time { width: 1%; white-space: nowrap; font-variant-numeric: tabular-nums; }
        .when { font-weight: bold; }
        .fire { font-size: 1.25rem; font-weight: bold; font-variant-numeric: tabular-nums; }
        .over { font-weight: bold; text-decoration: underline; }
        .until { white-space: nowrap; text-align: right; padding-right: 0; }
        #broken { margin-top: 1.5rem; border: 3px solid #000; padding: 0 1rem .6rem; }
        #cautions { margin-top: 1.5rem; border: 2px solid #000; padding: 0 1rem .6rem; }
        #cautions ul { columns: 18rem; }
        #broken h2, #cautions h2 { margin-top: .6rem; border-bottom: 0; }
        #order td:nth-child(2) { width: 45%; }
        #order p { font-size: .9rem; }
        .lists { columns: 21rem; column-gap: .8rem; }
        article { margin: 0 0 .8rem; border: 1px solid #000; padding: .6rem .8rem; break-inside: avoid; }
        article table { margin-top: .3rem; font-size: .9rem; }
        #pass .time, #pass .what { font-weight: bold; }
        figure { margin: 0; overflow-x: auto; }
        figure svg { max-width: 100%; min-width: 40rem; height: auto; }
        footer { margin-top: 2rem; border-top: 1px solid #000; font-size: .85rem; }
        @media screen and (max-width: 45rem) {
          body { padding: .7rem; }
          #order thead { display: none; }
          #order tr { display: block; padding: .5rem 0; border-bottom: 1px solid #999; }
          #order td, #order .time { display: block; width: auto; padding: 0; border: 0; }
          #order td:nth-child(2) { width: auto; }
          #order .time { font-weight: bold; }
          #order [data-label]::before { content: attr(data-label) ": "; font-weight: bold; }
          th, td { padding-right: .4rem; }
        }
        @media print {
          html { font-size: 9.5pt; }
          body { max-width: none; padding: 0; }
          h1 { font-size: 16pt; }
          h2 { margin-top: 12pt; font-size: 12pt; break-after: avoid; }
          .fire { font-size: 12pt; }
          tr, li { break-inside: avoid; }
          thead { display: table-header-group; }
          .lists { columns: 2; }
          #pass, #plates { break-before: page; }
          #pass h2, #plates h2 { margin-top: 0; }
          #floor { break-inside: avoid; }
          figure { overflow: visible; }
          figure svg { min-width: 0; width: 100%; }
          footer { margin-top: 12pt; }
        }

        """;

    private const string A4 = "@page { size: A4; margin: 13mm; }";

    private const string Letter = "@page { size: letter; margin: 0.5in; }";

    public static string For(SheetPaper paper) => (paper == SheetPaper.Letter ? Letter : A4) + Common;
}
