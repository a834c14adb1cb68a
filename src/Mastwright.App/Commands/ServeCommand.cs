using System.CommandLine;
using System.Globalization;
using System.Net;
using Mastwright.App.Files;
using Mastwright.Model.Trails;
using Mastwright.Report.Terminal;
using Mastwright.Workbench.Hosting;

namespace Mastwright.App.Commands;

/// <summary><c>serve</c>: the workbench in the browser.</summary>
internal static class ServeCommand
{
    public static Command Create()
    {
        var file = Shared.FileArgument();
        var port = new Option<int>("--port") { Description = "Port to listen on; 0 takes any free one.", DefaultValueFactory = _ => 4870 };
        var listen = new Option<string>("--listen") { Description = "Address to listen on. Anything but this machine itself asks for a random key in the address.", DefaultValueFactory = _ => "127.0.0.1" };
        var command = new Command("serve", "Open the workbench: a local page for the whole job.") { file, port, listen };
        command.SetAction((parsed, cancellation) => Run(parsed.GetValue(file), parsed.GetValue(port), parsed.GetValue(listen)!, cancellation));
        return command;
    }

    private static async Task<int> Run(string? path, int port, string listen, CancellationToken cancellation)
    {
        if (!IPAddress.TryParse(listen == "localhost" ? "127.0.0.1" : listen, out var address) || port is < 0 or > 65535)
        {
            return Wrong(new Finding("bad-address", Severity.Error, "The workbench cannot listen there.", Value: $"{listen}, port {port.ToString(CultureInfo.InvariantCulture)}",
                Allowed: "an IP address of this machine, and a port from 0 to 65535", WayOut: "Leave both out to serve this machine only."));
        }

        // A file with mistakes in it is welcome, the workbench is where they are mended; one that cannot be read is not.
        if (path is not null && DesignFile.Read(path) is { Ok: false } reading && reading.Findings.FirstOrDefault(f => f.Code is "no-file" or "file-unreadable") is { } unreadable)
        {
            return Wrong(unreadable);
        }

        var options = new ServeOptions { File = path, SampleText = DesignFile.StarterText(), Address = address, Port = port };
        await using var app = WorkbenchHost.Create(options);
        try
        {
            await app.StartAsync(cancellation);
        }
        catch (IOException e)
        {
            return Wrong(new Finding("port-taken", Severity.Error, "The workbench cannot listen there: " + e.Message, Value: $"{listen}, port {port.ToString(CultureInfo.InvariantCulture)}",
                WayOut: "Choose another port with --port; 0 takes any free one."));
        }

        Console.Out.WriteLine($"The workbench is open at {Addresses(app, options)}");
        Console.Out.WriteLine("Ctrl+C closes it.");
        await app.WaitForShutdownAsync(cancellation);
        return ExitCode.Pass;
    }

    private static string Addresses(WebApplication app, ServeOptions options)
    {
        var url = app.Urls.First().Replace("0.0.0.0", Dns.GetHostName(), StringComparison.Ordinal).Replace("[::]", Dns.GetHostName(), StringComparison.Ordinal);
        return options.Key is { } key ? $"{url}/?key={key}" : url;
    }

    private static int Wrong(Finding finding)
    {
        FindingsView.Write(Shared.Messages(), [finding]);
        return ExitCode.WrongInput;
    }
}
