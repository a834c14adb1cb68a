using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Mastwright.Workbench.Hosting;

/// <summary>
/// The page for readings taken outdoors. It is plain files, so that it works while the connection is gone; its worker must
/// lie in the same folder as the page it keeps.
/// </summary>
internal static class OutdoorsPage
{
    private static readonly Dictionary<string, (string File, string Type)> Files = new(StringComparer.Ordinal)
    {
        [""] = ("page.html", "text/html; charset=utf-8"),
        ["page.css"] = ("page.css", "text/css; charset=utf-8"),
        ["page.js"] = ("page.js", "text/javascript; charset=utf-8"),
        ["steps.js"] = ("steps.js", "text/javascript; charset=utf-8"),
        ["draw.js"] = ("draw.js", "text/javascript; charset=utf-8"),
        ["screens.js"] = ("screens.js", "text/javascript; charset=utf-8"),
        ["keep.js"] = ("keep.js", "text/javascript; charset=utf-8"),
        ["worker.js"] = ("worker.js", "text/javascript; charset=utf-8"),
        ["app.webmanifest"] = ("app.webmanifest", "application/manifest+json"),
    };

    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapGet("/outdoors/{file?}", (string? file, HttpContext context, IWebHostEnvironment host) =>
        {
            // Links inside the page are relative to its folder.
            if (file is null && !context.Request.Path.Value!.EndsWith('/'))
            {
                return Results.Redirect("/outdoors/");
            }

            if (!Files.TryGetValue(file ?? "", out var known))
            {
                return Results.NotFound();
            }

            // Asked anew each time: a phone must not go on with the page of an older version.
            context.Response.Headers.CacheControl = "no-cache";
            var found = host.WebRootFileProvider.GetFileInfo("_content/Mastwright.Workbench/outdoors/" + known.File);
            return Results.Stream(found.CreateReadStream(), known.Type);
        }).ExcludeFromDescription();
    }
}
