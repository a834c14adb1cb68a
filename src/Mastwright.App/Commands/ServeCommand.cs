using System.CommandLine;
using System.Globalization;
using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
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
        var certificate = new Option<string?>("--certificate") { Description = "Certificate (PEM) for a secure connection, one your phone trusts: only then does its browser open the outdoors page without a connection." }.NamesFile();
        var privateKey = new Option<string?>("--certificate-key") { Description = "Private key (PEM) of the certificate; left out, it is in the same file." }.NamesFile();
        var command = new Command("serve", "Open the workbench: a local page for the whole job.") { file, port, listen, certificate, privateKey };
        command.SetAction((parsed, cancellation) => Run(parsed.GetValue(file), parsed.GetValue(port), parsed.GetValue(listen)!, (parsed.GetValue(certificate), parsed.GetValue(privateKey)), cancellation));
        return command;
    }

    private static async Task<int> Run(string? path, int port, string listen, (string? File, string? Key) secure, CancellationToken cancellation)
    {
        if (!IPAddress.TryParse(listen == "localhost" ? "127.0.0.1" : listen, out var address) || port is < 0 or > 65535)
        {
            return Wrong(new Finding("bad-address", Severity.Error, "The workbench cannot listen there.", Value: $"{listen}, port {port.ToString(CultureInfo.InvariantCulture)}",
                Allowed: "an IP address of this machine, and a port from 0 to 65535", WayOut: "Leave both out to serve this machine only."));
        }

        // A file with mistakes in it is welcome, the workbench is where they are mended; one that cannot be read is not.
        if (path is not null && DesignFile.Read(path) is { Ok: false } reading && reading.Findings.FirstOrDefault(f => f.Code is "no-file" or "file-unreadable" or "file-too-large") is { } unreadable)
        {
            return Wrong(unreadable);
        }

        X509Certificate2? certificate = null;
        try
        {
            certificate = secure.File is null ? null : X509Certificate2.CreateFromPemFile(secure.File, secure.Key ?? secure.File);
        }
        catch (Exception e) when (e is CryptographicException or IOException or UnauthorizedAccessException or ArgumentException)
        {
            return Wrong(new Finding("certificate-bad", Severity.Error, "The certificate cannot be used: " + e.Message, Value: secure.Key is null ? secure.File : $"{secure.File}, {secure.Key}",
                Allowed: "a certificate and its private key in PEM form", WayOut: "Check both files, or leave them out for a plain connection."));
        }

        using var held = certificate;
        var options = new ServeOptions { File = path, SampleText = DesignFile.StarterText(), Address = address, Port = port, Certificate = certificate };
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
