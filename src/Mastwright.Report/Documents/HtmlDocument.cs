using System.Globalization;
using System.Net;
using System.Text;
using System.Xml.Linq;

namespace Mastwright.Report.Documents;

/// <summary>
/// Writes a document as one self-contained web page: its style and drawings inside, nothing fetched, no script, every
/// word escaped. It prints well and reads in grey.
/// </summary>
public static class HtmlDocument
{
    private const string Style = """
        :root{color-scheme:light}
        *{box-sizing:border-box}
        body{font:16px/1.5 system-ui,"DejaVu Sans",Verdana,sans-serif;color:#111;background:#fff;margin:0 auto;padding:1rem 1.25rem 4rem;max-width:62rem}
        h1{font-size:1.9rem;margin:.2rem 0;line-height:1.2}
        h2{font-size:1.45rem;margin:2.5rem 0 .6rem;border-bottom:2px solid #111}
        h3{font-size:1.15rem;margin:1.6rem 0 .4rem}
        h4{font-size:1rem;margin:1.2rem 0 .3rem}
        .under{color:#444;margin:0 0 1rem}
        .wide{overflow-x:auto;margin:0 0 1.2rem}
        table{border-collapse:collapse;font-size:.85rem;line-height:1.35}
        caption{text-align:left;font-weight:600;padding:.2rem 0;font-size:.95rem}
        th{background:#e2e2e2;text-align:left;border-top:2px solid #111;border-bottom:1px solid #111}
        th,td{padding:.25rem .5rem;vertical-align:top}
        td{border-bottom:1px solid #ccc;overflow-wrap:break-word;white-space:pre-line}
        td:not(.n){min-width:5.5rem}td:first-child:not(.n){min-width:9rem}
        td.pass,td.caution,td.fail,td.unknown{white-space:nowrap;min-width:0}
        tbody tr:nth-child(even){background:#f6f6f6}
        .n{text-align:right;white-space:nowrap}
        .fail{color:#8f0000;font-weight:700}.caution,.unknown{color:#6b4a00;font-weight:600}.pass{color:#14532d}
        aside{margin:.6rem 0;padding:.4rem .8rem;border-left:3px solid #888}
        aside.hurt{border-left:8px solid #111;background:#f2f2f2}
        ol.steps{list-style:none;padding:0;counter-reset:s}
        ol.steps li{counter-increment:s;padding:.25rem 0 .25rem 4rem;position:relative}
        ol.steps li:before{content:"☐ " counter(s) ".";position:absolute;left:0;width:3.5rem;text-align:right}
        ol.steps li.hold{font-weight:700}
        figure{margin:1rem 0;break-inside:avoid}
        figure svg{max-width:100%;height:auto;background:#fff;display:block}
        figcaption{font-size:.85rem;color:#333;margin-top:.3rem}
        nav ul{list-style:none;padding-left:1rem;margin:.2rem 0}nav a{color:#111}
        footer{margin-top:3rem;border-top:1px solid #888;font-size:.85rem;color:#444}
        @media print{body{max-width:none;padding:0;font-size:10pt}.break{break-before:page}.wide{overflow:visible}thead{display:table-header-group}tr,aside,li{break-inside:avoid}h2,h3,h4{break-after:avoid}table{font-size:8pt}td:not(.n),td:first-child:not(.n){min-width:0}}
        """;

    /// <summary>The page.</summary>
    /// <param name="document">What to show.</param>
    /// <param name="date">The date shown at the end.</param>
    public static string Write(Document document, DateOnly date)
    {
        var html = new StringBuilder();
        html.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
            .Append("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; img-src data:\">\n")
            .Append(CultureInfo.InvariantCulture, $"<title>{Safe(document.Title)}: {Safe(document.Subtitle)}</title>\n<style>\n{Style}\n</style>\n</head>\n<body>\n")
            .Append(CultureInfo.InvariantCulture, $"<h1>{Safe(document.Title)}</h1>\n<p class=\"under\">{Safe(document.Subtitle)}</p>\n");
        var headings = 0;
        foreach (var block in document.Blocks)
        {
            headings += block is Heading ? 1 : 0;
            Write(html, block, document, headings);
        }

        html.Append(CultureInfo.InvariantCulture, $"<footer>{Safe(document.Subtitle)}, {date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}</footer>\n</body>\n</html>\n");
        return html.ToString();
    }

    private static void Write(StringBuilder html, Block block, Document document, int number)
    {
        switch (block)
        {
            case Heading h:
                html.Append(CultureInfo.InvariantCulture, $"<h{h.Level + 1} id=\"s{number}\">{Safe(h.Text)}</h{h.Level + 1}>\n");
                break;
            case Paragraph p:
                html.Append(CultureInfo.InvariantCulture, $"<p>{Safe(p.Text)}</p>\n");
                break;
            case Note n:
                var (word, look) = n.Kind switch { NoteKind.Caution => ("Caution", " class=\"hurt\""), NoteKind.Assumption => ("Note", ""), _ => ("Remark", "") };
                html.Append(CultureInfo.InvariantCulture, $"<aside{look}><strong>{word}:</strong> {Safe(n.Text)}</aside>\n");
                break;
            case Steps s:
                html.Append("<ol class=\"steps\">\n").AppendJoin("", s.Items.Select(i => $"<li{(i.StartsWith("HOLD", StringComparison.Ordinal) ? " class=\"hold\"" : "")}>{Safe(i)}</li>\n")).Append("</ol>\n");
                break;
            case DataTable t:
                Write(html, t);
                break;
            case Figure f:
                html.Append(CultureInfo.InvariantCulture, $"<figure>\n{Inline(f.Svg)}\n<figcaption>{Safe(f.Caption)}</figcaption>\n</figure>\n");
                break;
            case PageBreak:
                html.Append("<div class=\"break\"></div>\n");
                break;
            case Contents:
                WriteContents(html, document);
                break;
        }
    }

    private static void Write(StringBuilder html, DataTable table)
    {
        html.Append("<div class=\"wide\"><table>\n");
        if (table.Caption.Length > 0)
        {
            html.Append(CultureInfo.InvariantCulture, $"<caption>{Safe(table.Caption)}</caption>\n");
        }

        html.Append("<thead><tr>").AppendJoin("", table.Columns.Select(c => $"<th scope=\"col\"{Right(c)}>{Safe(c.Header)}</th>")).Append("</tr></thead>\n<tbody>\n");
        foreach (var row in table.Rows)
        {
            html.Append("<tr>").AppendJoin("", row.Zip(table.Columns, (c, column) => c.Verdict is { } v
                ? $"<td class=\"{v.ToString().ToLowerInvariant()}\">{PdfLayout.Sign(v)} {Safe(c.Text)}</td>"
                : $"<td{Right(column)}>{Safe(c.Text)}</td>")).Append("</tr>\n");
        }

        html.Append("</tbody></table></div>\n");
    }

    private static void WriteContents(StringBuilder html, Document document)
    {
        html.Append("<nav aria-label=\"Contents\"><ul>\n");
        var number = 0;
        foreach (var heading in document.Blocks.OfType<Heading>())
        {
            number++;
            if (heading.Level <= 2)
            {
                var text = $"<a href=\"#s{number}\">{Safe(heading.Text)}</a>";
                html.Append(heading.Level == 1 ? $"<li>{text}</li>\n" : $"<li><ul><li>{text}</li></ul></li>\n");
            }
        }

        html.Append("</ul></nav>\n");
    }

    private static string Right(Column column) => column.Align == Align.Right ? " class=\"n\"" : "";

    private static string Safe(string text) => WebUtility.HtmlEncode(text);

    // A drawing goes into the page as elements, without its prolog and without anything that could run or fetch.
    private static string Inline(string svg)
    {
        var root = XElement.Parse(svg);
        root.DescendantsAndSelf().Where(e => e.Name.LocalName is "script" or "foreignObject" or "image" or "use" or "a").Remove();
        foreach (var attribute in root.DescendantsAndSelf().Attributes().Where(a => a.Name.LocalName.StartsWith("on", StringComparison.OrdinalIgnoreCase) || a.Name.LocalName == "href").ToList())
        {
            attribute.Remove();
        }

        return root.ToString(SaveOptions.DisableFormatting);
    }
}
