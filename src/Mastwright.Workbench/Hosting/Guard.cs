using System.Net;
using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Http;

namespace Mastwright.Workbench.Hosting;

/// <summary>
/// Stands before every request: only this machine's own names are answered, other pages' scripts are refused, and when the
/// workbench listens beyond loopback the random key must have been in the address once.
/// </summary>
public sealed class Guard(RequestDelegate next, ServeOptions options)
{
    private const string Cookie = "mastwright-key";

    // Scripts come from this process only, none stand in the page. Styles may stand in the page: the component library sets them.
    private const string Policy =
        "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; font-src 'self'; connect-src 'self'; "
        + "worker-src 'self'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'; manifest-src 'self'";

    /// <summary>Handles one request.</summary>
    public async Task InvokeAsync(HttpContext context)
    {
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = Policy;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";

        if (context.Request.ContentLength > ServeOptions.LargestBody)
        {
            await Refuse(context, StatusCodes.Status413PayloadTooLarge, "This is larger than any design.");
            return;
        }

        if (!HostIsOurs(context))
        {
            await Refuse(context, StatusCodes.Status421MisdirectedRequest, "This address does not belong to the workbench. Open the address that `mastwright serve` printed.");
            return;
        }

        if (!OriginIsOurs(context))
        {
            await Refuse(context, StatusCodes.Status403Forbidden, "Requests from other pages are refused.");
            return;
        }

        if (options.Key is { } key && !await KeyIsKnown(context, key))
        {
            return;
        }

        await next(context);
    }

    private bool HostIsOurs(HttpContext context)
    {
        var name = context.Request.Host.Host.Trim('[', ']');
        if (name.Equals("localhost", StringComparison.OrdinalIgnoreCase))
        {
            return true;
        }

        if (IPAddress.TryParse(name, out var address))
        {
            return IPAddress.IsLoopback(address) || (options.Key is not null && address.Equals(Plain(context.Connection.LocalIpAddress)));
        }

        return options.Key is not null && name.Equals(Dns.GetHostName(), StringComparison.OrdinalIgnoreCase);
    }

    private static IPAddress? Plain(IPAddress? address) => address is { IsIPv4MappedToIPv6: true } ? address.MapToIPv4() : address;

    private static bool OriginIsOurs(HttpContext context)
    {
        var origin = context.Request.Headers.Origin.ToString();
        return origin.Length == 0 || (Uri.TryCreate(origin, UriKind.Absolute, out var uri) && uri.Authority.Equals(context.Request.Host.Value, StringComparison.OrdinalIgnoreCase));
    }

    private static async Task<bool> KeyIsKnown(HttpContext context, string key)
    {
        if (Same(context.Request.Cookies[Cookie], key) || Same(context.Request.Headers["X-Mastwright-Key"], key))
        {
            return true;
        }

        if (Same(context.Request.Query["key"], key))
        {
            context.Response.Cookies.Append(Cookie, key, new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Strict, IsEssential = true });

            // The key leaves the address bar, and with it the history.
            context.Response.Redirect(context.Request.Path.HasValue ? context.Request.Path.Value : "/");
            return false;
        }

        await Refuse(context, StatusCodes.Status401Unauthorized, "This workbench is shared with a key. Open the whole address that `mastwright serve` printed, key included.");
        return false;
    }

    private static bool Same(string? given, string key) =>
        given is not null && CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(given), Encoding.UTF8.GetBytes(key));

    private static Task Refuse(HttpContext context, int status, string words)
    {
        context.Response.StatusCode = status;
        context.Response.ContentType = "text/plain; charset=utf-8";
        return context.Response.WriteAsync(words);
    }
}
