using System.Net;
using System.Net.Http.Headers;
using System.Net.Sockets;
using System.Text;
using System.Text.RegularExpressions;
using Mastwright.Workbench.Hosting;

namespace Mastwright.Workbench.Tests;

/// <summary>What nobody outside may do with the workbench.</summary>
[Collection("one at a time")]
public sealed partial class SecurityTests(Keeping keeping)
{
    [Fact]
    public async Task ByDefaultOnlyThisMachineIsListenedTo()
    {
        var served = await keeping.Served();
        Assert.True(IPAddress.IsLoopback(IPAddress.Parse(served.Address.Host)));
        Assert.DoesNotContain("key", served.Address.Query);
        var outside = (await Dns.GetHostAddressesAsync(Dns.GetHostName())).Where(a => a.AddressFamily == AddressFamily.InterNetwork && !IPAddress.IsLoopback(a)).ToList();
        foreach (var address in outside)
        {
            using var line = new TcpClient();
            await Assert.ThrowsAnyAsync<SocketException>(() => line.ConnectAsync(address, served.Address.Port));
        }
    }

    [Fact]
    public void AKeyIsRandomAndOnlyForOtherMachines()
    {
        var keys = Enumerable.Range(0, 50).Select(_ => new ServeOptions { SampleText = "", Address = IPAddress.Any }.Key!).ToList();
        Assert.Equal(50, keys.Distinct().Count());
        Assert.All(keys, k => Assert.Matches("^[0-9a-f]{32}$", k));
        Assert.Null(new ServeOptions { SampleText = "" }.Key);
        Assert.Null(new ServeOptions { SampleText = "", Address = IPAddress.IPv6Loopback }.Key);
    }

    [Theory]
    [InlineData("/api/journal/card")]
    [InlineData("/api/journal/export.json")]
    [InlineData("/api/design")]
    [InlineData("/outdoors/")]
    [InlineData("/outdoors/worker.js")]
    [InlineData("/_framework/blazor.web.js")]
    public async Task AStrangeHostGetsNothingAnywhere(string path)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, path);
        request.Headers.Host = "rebound.example";
        using var answer = await (await keeping.Client()).SendAsync(request);
        Assert.Equal(HttpStatusCode.MisdirectedRequest, answer.StatusCode);
    }

    [Theory]
    [InlineData("http://evil.example")]
    [InlineData("null")]
    [InlineData("http://127.0.0.1:1")]
    public async Task AnotherPageCannotWriteTheJournal(string origin)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/journal/entries") { Content = new StringContent("[]", Encoding.UTF8, "application/json") };
        request.Headers.Add("Origin", origin);
        using var answer = await (await keeping.Client()).SendAsync(request);
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.False(answer.Headers.Contains("Access-Control-Allow-Origin"));
    }

    [Fact]
    public async Task AFormPostedToAPageIsAskedForItsToken()
    {
        // The pages have no forms that post; whatever posts to one is a stranger.
        using var answer = await (await keeping.Client()).PostAsync("/start", new FormUrlEncodedContent([new("space", "1 m")]));
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    [Theory]
    [InlineData("/outdoors/..%2f..%2fmastwright.dll")]
    [InlineData("/outdoors/%2e%2e%2f%2e%2e%2fstation.yaml")]
    [InlineData("/outdoors/../station.yaml")]
    [InlineData("/outdoors/page.html")]
    [InlineData("/outdoors/..%5cstation.yaml")]
    [InlineData("/api/book/../../station.yaml")]
    [InlineData("/api/book/00000000-0000-0000-0000-000000000000/pdf")]
    [InlineData("/api/journal/..%2fexport.json")]
    [InlineData("/station.journal")]
    [InlineData("/station.yaml.unsaved")]
    public async Task NoPathLeadsToAFileThatIsNotOffered(string path)
    {
        // Sent as written: the client would tidy it up.
        var address = (await keeping.Served()).Address;
        using var line = new TcpClient(address.Host, address.Port);
        await using var stream = line.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes($"GET {path} HTTP/1.1\r\nHost: {address.Authority}\r\nConnection: close\r\n\r\n"));
        using var reader = new StreamReader(stream);
        var answer = await reader.ReadToEndAsync();
        Assert.Matches("^HTTP/1.1 (404|400)", answer);
        Assert.DoesNotContain("mastwright: 1", answer);
    }

    [Theory]
    [InlineData("/outdoors/")]
    [InlineData("/journal")]
    [InlineData("/journal/entries")]
    [InlineData("/sweep")]
    [InlineData("/book")]
    [InlineData("/studies/tension")]
    public async Task PagesHoldNoScriptAndNoHandlerOfTheirOwn(string path)
    {
        using var answer = await (await keeping.Client()).GetAsync(path);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var policy = answer.Headers.GetValues("Content-Security-Policy").Single();
        Assert.Contains("script-src 'self';", policy);
        Assert.Contains("frame-ancestors 'none'", policy);
        Assert.Contains("base-uri 'self'", policy);
        var html = await answer.Content.ReadAsStringAsync();
        Assert.DoesNotMatch("<script(?![^>]*\\bsrc=)", html);
        Assert.DoesNotMatch(Handler(), html);
        Assert.DoesNotContain("javascript:", html, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task MarkupInTheDesignAndTheJournalReachesNoPageUnescaped()
    {
        const string Hurt = "<img src=x onerror=hurt()><script>hurt()</script>";
        var text = Keeping.OneBand.Replace("name: Garden tube", $"name: '{Hurt}'", StringComparison.Ordinal).Replace("- name: T\n", "- name: 'T<b>'\n", StringComparison.Ordinal);
        await using var served = await Served.Start(text);
        using var client = new HttpClient { BaseAddress = served.Address };
        using var note = new StringContent($"[{{\"id\":\"{Guid.NewGuid()}\",\"kind\":\"note\",\"text\":\"{Hurt}\",\"author\":\"{Hurt}\",\"weather\":\"{Hurt}\"}}]", Encoding.UTF8, "application/json");
        Assert.Contains("kept", await (await client.PostAsync("/api/journal/entries", note)).Content.ReadAsStringAsync());
        foreach (var path in (string[])["", "site", "stand", "radiate", "feed", "survive", "build", "keep", "text", "journal", "journal/entries", "journal/changes", "journal/files", "sweep", "book", "studies/cut"])
        {
            var html = await client.GetStringAsync("/" + path);
            Assert.DoesNotContain("<img src=x", html);
            Assert.DoesNotContain("<script>hurt", html);
            Assert.DoesNotContain("T<b>", html);
        }
    }

    [Theory]
    [InlineData("/api/journal/entries", "application/json")]
    [InlineData("/api/check", "application/yaml")]
    public async Task ABodyThatIsTooLargeIsRefusedThoughItsSizeIsNotSaid(string path, string type)
    {
        using var content = new StreamContent(new Endless(6_000_000));
        content.Headers.ContentType = new MediaTypeHeaderValue(type);
        using var request = new HttpRequestMessage(HttpMethod.Post, path) { Content = content };
        request.Headers.TransferEncodingChunked = true;
        using var client = new HttpClient { BaseAddress = (await keeping.Served()).Address };
        try
        {
            using var answer = await client.SendAsync(request);
            Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        }
        catch (HttpRequestException e)
        {
            // The line may be cut while the rest is still being sent.
            Assert.IsType<IOException>(e.InnerException, exactMatch: false);
        }
    }

    [Fact]
    public async Task BeyondLoopbackNothingIsToldWithoutTheKey()
    {
        await using var shared = await Served.Start(Keeping.OneBand, "--listen", "0.0.0.0");
        using var client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false, UseCookies = false }) { BaseAddress = new Uri($"http://127.0.0.1:{shared.Address.Port}") };
        foreach (var path in (string[])["/outdoors/", "/outdoors/worker.js", "/api/journal/card", "/api/journal/export.json", "/api/design", "/journal", "/_blazor", "/_content/Mastwright.Workbench/workbench.css"])
        {
            using var answer = await client.GetAsync(path);
            Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
            Assert.DoesNotContain(shared.Address.Query[5..], await answer.Content.ReadAsStringAsync());
        }

        using var with = new HttpRequestMessage(HttpMethod.Get, "/api/journal/card");
        with.Headers.Add("X-Mastwright-Key", shared.Address.Query[5..]);
        using var inside = await client.SendAsync(with);
        Assert.Equal(HttpStatusCode.OK, inside.StatusCode);
    }

    [GeneratedRegex("<[^>]+\\son[a-z]+\\s*=")]
    private static partial Regex Handler();

    /// <summary>So many blanks, made as they are read.</summary>
    private sealed class Endless(long length) : Stream
    {
        private long left = length;

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

        public override int Read(byte[] buffer, int offset, int count)
        {
            var n = (int)Math.Min(left, count);
            Array.Fill(buffer, (byte)' ', offset, n);
            left -= n;
            return n;
        }

        public override void Flush() => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
