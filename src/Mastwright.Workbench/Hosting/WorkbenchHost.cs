using Mastwright.Workbench.Desks;
using Mastwright.Workbench.Keeping;
using Mastwright.Workbench.Pages;
using Mastwright.Workbench.Printing;
using Mastwright.Workbench.Work;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using MudBlazor.Services;

namespace Mastwright.Workbench.Hosting;

/// <summary>Builds the web server of the workbench.</summary>
public static class WorkbenchHost
{
    /// <summary>A server ready to start.</summary>
    /// <param name="options">How to serve.</param>
    /// <param name="solver">The physics; null for the real one.</param>
    public static WebApplication Create(ServeOptions options, IStationSolver? solver = null)
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            ApplicationName = "mastwright",
            ContentRootPath = AppContext.BaseDirectory,
            WebRootPath = "wwwroot",
            EnvironmentName = Environments.Production,
        });
        builder.WebHost.UseStaticWebAssets();
        builder.WebHost.UseSetting(WebHostDefaults.PreventHostingStartupKey, "true");
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = ServeOptions.LargestBody;
            kestrel.Listen(options.Address, options.Port, listen =>
            {
                if (options.Certificate is { } certificate)
                {
                    listen.UseHttps(certificate);
                }
            });
        });
        builder.Logging.ClearProviders();
        builder.Logging.AddSimpleConsole(c => c.SingleLine = true).SetMinimumLevel(LogLevel.Warning);

        // The port may be taken, which the command explains in words of its own.
        builder.Logging.AddFilter("Microsoft.Extensions.Hosting.Internal.Host", LogLevel.None);

        var services = builder.Services;
        services.AddSingleton(options);
        services.AddSingleton(solver ?? new StationSolver());
        services.AddSingleton(new DeskOptions(options.File, options.SampleText, options.SaveFolder, options.SpareFolder));
        services.AddSingleton<Desk>();
        services.AddSingleton<JournalDesk>();
        services.AddSingleton<FieldInbox>();
        services.AddSingleton<KeepWatch>();
        services.AddSingleton<BookPress>();
        services.AddSingleton<StudyQueue>();
        services.AddSingleton<Variants>();
        services.AddHostedService<DiskWatch>();
        services.AddHttpContextAccessor();
        services.AddMudServices();
        services.AddOpenApi();
        services.AddAntiforgery();

        // What is signed need not outlive this process: no keys are left on the disk.
        services.AddDataProtection().UseEphemeralDataProtectionProvider();
        services.AddRazorComponents().AddInteractiveServerComponents(c =>
        {
            c.DisconnectedCircuitMaxRetained = 20;
            c.DisconnectedCircuitRetentionPeriod = TimeSpan.FromMinutes(10);
        }).AddHubOptions(h => h.MaximumReceiveMessageSize = ServeOptions.LargestBody);

        var app = builder.Build();
        app.UseMiddleware<Guard>();

        // A page that is not there says so in the workbench's own dress; scripts get the bare status.
        app.UseWhen(c => HttpMethods.IsGet(c.Request.Method) && !c.Request.Path.StartsWithSegments("/api"), page => page.UseStatusCodePagesWithReExecute("/not-found"));
        app.UseAntiforgery();
        app.MapStaticAssets();
        app.MapOpenApi();
        Api.Map(app);
        KeepingApi.Map(app);
        OutdoorsPage.Map(app);
        app.MapRazorComponents<Shell>().AddInteractiveServerRenderMode(o => o.ContentSecurityFrameAncestorsPolicy = null);

        // The desk begins to compute before the first page is asked for.
        app.Lifetime.ApplicationStarted.Register(() => app.Services.GetRequiredService<Desk>());
        return app;
    }
}
