using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.Json.Nodes;
using Json.Schema;
using Mastwright.Report.Json;
using Mastwright.Tests.Shared;

namespace Mastwright.Workbench.Tests;

/// <summary>What the server answers, and what it refuses.</summary>
[Collection("one at a time")]
public sealed class HttpTests(HttpTests.Fixture fixture) : IClassFixture<HttpTests.Fixture>
{
    private static readonly string Tube = File.ReadAllText(Repository.File("examples", "tube-12m.yaml"));

    public sealed class Fixture : IAsyncLifetime
    {
        public Served Served { get; private set; } = null!;

        public HttpClient Client { get; private set; } = null!;

        public async ValueTask InitializeAsync()
        {
            Served = await Served.Start(Tube);
            Client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false, UseCookies = false }) { BaseAddress = Served.Address };
        }

        public async ValueTask DisposeAsync()
        {
            Client.Dispose();
            await Served.DisposeAsync();
        }
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/site")]
    [InlineData("/stand")]
    [InlineData("/radiate")]
    [InlineData("/feed")]
    [InlineData("/survive")]
    [InlineData("/build")]
    [InlineData("/keep")]
    [InlineData("/text")]
    [InlineData("/start")]
    [InlineData("/_framework/blazor.web.js")]
    [InlineData("/_content/MudBlazor/MudBlazor.min.css")]
    [InlineData("/_content/Mastwright.Workbench/workbench.css")]
    [InlineData("/_content/Mastwright.Workbench/lib/scene.js")]
    [InlineData("/openapi/v1.json")]
    public async Task EveryPageAnswersUnderAStrictPolicy(string path)
    {
        using var answer = await fixture.Client.GetAsync(path);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var policy = answer.Headers.GetValues("Content-Security-Policy").Single();
        Assert.Contains("script-src 'self';", policy);
        Assert.Contains("default-src 'none'", policy);
        Assert.DoesNotContain("unsafe-eval", policy);
        var text = await answer.Content.ReadAsStringAsync();
        if (answer.Content.Headers.ContentType?.MediaType == "text/html")
        {
            Assert.DoesNotMatch("<script(?![^>]*\\bsrc=)", text);
        }
    }

    [Theory]
    [InlineData("evil.example")]
    [InlineData("127.0.0.1.evil.example")]
    [InlineData("169.254.1.1")]
    public async Task AStrangeHostIsRefused(string host)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/");
        request.Headers.Host = host;
        using var answer = await fixture.Client.SendAsync(request);
        Assert.Equal(HttpStatusCode.MisdirectedRequest, answer.StatusCode);
    }

    [Theory]
    [InlineData("/_blazor/negotiate?negotiateVersion=1")]
    [InlineData("/api/check")]
    public async Task AnotherPagesScriptIsRefused(string path)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, path);
        request.Headers.Add("Origin", "http://evil.example");
        using var answer = await fixture.Client.SendAsync(request);
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
    }

    [Theory]
    [InlineData("/../../etc/passwd")]
    [InlineData("/%2e%2e/%2e%2e/etc/passwd")]
    [InlineData("/_content/..%2f..%2fmastwright.dll")]
    [InlineData("/station.yaml")]
    [InlineData("/nowhere")]
    public async Task NothingOnTheDiskIsServed(string path)
    {
        using var answer = await fixture.Client.GetAsync(path);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.DoesNotContain("root:", await answer.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task ADesignSentByAScriptComesBackAsTheResultTheSchemaDescribes()
    {
        using var answer = await fixture.Client.PostAsync("/api/check", Yaml(Tube));
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var text = await answer.Content.ReadAsStringAsync();
        var schema = JsonSchema.FromText(ResultJson.Schema().ToJsonString());
        Assert.True(schema.Evaluate(System.Text.Json.JsonDocument.Parse(text).RootElement).IsValid);
    }

    [Fact]
    public async Task ADesignWithErrorsComesBackWithEveryFinding()
    {
        using var answer = await fixture.Client.PostAsync("/api/check", Yaml(Tube.Replace("12", "1200000", StringComparison.Ordinal)));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var findings = JsonNode.Parse(await answer.Content.ReadAsStringAsync())!.AsArray();
        Assert.NotEmpty(findings);
        Assert.All(findings, f => Assert.False(string.IsNullOrEmpty((string?)f!["message"])));
    }

    [Fact]
    public async Task AFormOfAnotherPageCannotPostADesign()
    {
        using var answer = await fixture.Client.PostAsync("/api/check", new StringContent(Tube, Encoding.UTF8, "text/plain"));
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, answer.StatusCode);
    }

    [Fact]
    public async Task AnOversizeBodyIsRefused()
    {
        // Announced, never sent: the refusal must come before the body.
        var address = fixture.Served.Address;
        using var line = new TcpClient(address.Host, address.Port);
        await using var stream = line.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes($"POST /api/check HTTP/1.1\r\nHost: {address.Authority}\r\nContent-Type: application/yaml\r\nContent-Length: 6000000\r\n\r\n"));
        using var reader = new StreamReader(stream);
        Assert.StartsWith("HTTP/1.1 413", await reader.ReadLineAsync());
    }

    [Fact]
    public async Task BeyondLoopbackTheKeyIsAskedFor()
    {
        await using var shared = await Served.Start(Tube, "--listen", "0.0.0.0");
        var key = shared.Address.Query.Replace("?key=", "", StringComparison.Ordinal);
        Assert.Matches("^[0-9a-f]{32}$", key);
        using var client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false, UseCookies = false }) { BaseAddress = new Uri($"http://127.0.0.1:{shared.Address.Port}") };
        using var without = await client.GetAsync("/");
        Assert.Equal(HttpStatusCode.Unauthorized, without.StatusCode);
        using var wrong = await client.GetAsync("/?key=" + new string('0', 32));
        Assert.Equal(HttpStatusCode.Unauthorized, wrong.StatusCode);
        using var right = await client.GetAsync("/?key=" + key);
        Assert.Equal(HttpStatusCode.Redirect, right.StatusCode);
        Assert.DoesNotContain(key, right.Headers.Location!.ToString());
        var cookie = right.Headers.GetValues("Set-Cookie").Single();
        Assert.Contains("httponly", cookie);
        Assert.Contains("samesite=strict", cookie);
        using var request = new HttpRequestMessage(HttpMethod.Get, "/");
        request.Headers.Add("Cookie", cookie.Split(';')[0]);
        using var inside = await client.SendAsync(request);
        Assert.Equal(HttpStatusCode.OK, inside.StatusCode);
    }

    private static StringContent Yaml(string text) => new(text, Encoding.UTF8, "application/yaml");
}
