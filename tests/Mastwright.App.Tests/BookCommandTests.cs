using Mastwright.Report.Documents;
using Mastwright.Tests.Shared;

namespace Mastwright.App.Tests;

public sealed class BookCommandTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("mastwright-book-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public async Task The_book_is_written_whole_and_an_old_one_is_never_replaced_unasked()
    {
        var (pdf, html, prices) = (Path.Combine(folder, "book.pdf"), Path.Combine(folder, "book.html"), Path.Combine(folder, "prices.csv"));
        await File.WriteAllTextAsync(prices, "part;unit;price;currency\nconcrete;m3;200;XYZ\n");
        var run = await Cli.Start("book", Repository.File("examples", "ice-27m.yaml"), "--pdf", pdf, "--html", html, "--prices", prices, "--date", "2027-05-01");

        Assert.Equal(0, run.ExitCode);
        Assert.Equal("%PDF-", System.Text.Encoding.ASCII.GetString(await File.ReadAllBytesAsync(pdf), 0, 5));
        var page = await File.ReadAllTextAsync(html);
        Assert.Contains("Ridge in the freezing rain", page);
        Assert.Contains("Cost, XYZ", page);
        Assert.Contains("2027-05-01", page);
        Assert.Equal(3, Directory.GetFiles(folder).Length);

        await File.WriteAllTextAsync(pdf, "mine");
        var again = await Cli.Start("book", "--pdf", pdf);
        Assert.Equal(2, again.ExitCode);
        Assert.Contains("--replace", again.Errors);
        Assert.Equal("mine", await File.ReadAllTextAsync(pdf));
    }

    [Theory]
    [InlineData("Add --pdf")]
    [InlineData("no name of a file", "--pdf", "")]
    [InlineData("no name of a file", "--html", " ")]
    [InlineData("Name a file in it", "--pdf", "{folder}")]
    [InlineData("folder of this file does not exist", "--html", "{folder}/none/book.html")]
    [InlineData("2027-05-01", "--pdf", "{folder}/a.pdf", "--date", "May")]
    [InlineData("There is no such file", "--pdf", "{folder}/a.pdf", "--prices", "{folder}/none.csv")]
    public async Task Wrong_orders_are_told_before_any_work_is_done(string said, params string[] arguments)
    {
        var run = await Cli.Start(["book", .. arguments.Select(a => a.Replace("{folder}", folder))]);

        Assert.Equal(2, run.ExitCode);
        Assert.Contains(said, run.Errors);
        Assert.DoesNotContain("   at ", run.Errors);
        Assert.Empty(Directory.GetFiles(folder));
    }

    [Fact]
    public void A_place_that_cannot_be_written_is_a_finding_and_leaves_nothing_behind()
    {
        if (!Directory.Exists("/proc/self"))
        {
            Assert.Skip("needs a file system that refuses every write");
        }

        var finding = WholeFile.Write("/proc/book.pdf", [1, 2, 3], replace: false);

        Assert.Equal("file-unwritable", finding?.Code);
        Assert.Contains("disk", finding!.WayOut);
        Assert.Null(WholeFile.Write(Path.Combine(folder, "a.bin"), [1], replace: false));
        Assert.Equal("file-exists", WholeFile.Write(Path.Combine(folder, "a.bin"), [2], replace: false)?.Code);
        Assert.Null(WholeFile.Write(Path.Combine(folder, "a.bin"), [2, 3], replace: true));
        Assert.Equal([2, 3], File.ReadAllBytes(Path.Combine(folder, "a.bin")));
        Assert.Single(Directory.GetFiles(folder));
    }

    [Fact]
    public async Task The_list_of_materials_is_a_study_like_the_others_with_the_users_prices()
    {
        var (prices, sample) = (Path.Combine(folder, "prices.csv"), Path.Combine(folder, "sample.csv"));
        await File.WriteAllTextAsync(prices, "part;unit;price;currency\nconcrete;m3;200;XYZ\n");
        var priced = await Cli.Start("materials", Repository.File("examples", "tube-12m.yaml"), "--prices", prices, "--csv", folder);
        var unread = await Cli.Start("materials", "--prices", Path.Combine(folder, "none.csv"));
        var written = await Cli.Start("materials", "--sample", sample);

        Assert.Equal((0, 2, 0), (priced.ExitCode, unread.ExitCode, written.ExitCode));
        Assert.Contains("XYZ", priced.Output);
        Assert.Contains(Directory.GetFiles(folder, "materials-*-table.csv"), f => File.ReadAllText(f).Contains("Cost, XYZ", StringComparison.Ordinal));
        Assert.Contains("There is no such file", unread.Errors);
        Assert.StartsWith("part,", (await File.ReadAllLinesAsync(sample)).First(l => !l.StartsWith('#')));

        // Prices in two currencies cannot be added: refused, with the line.
        await File.AppendAllTextAsync(prices, "crushed stone;m3;20;ABC\n");
        var mixed = await Cli.Start("materials", "--prices", prices);
        Assert.Equal(2, mixed.ExitCode);
        Assert.Contains("cannot be added", mixed.Errors);
    }

    [Theory]
    [InlineData("materials", "base-post-60kN")]
    [InlineData("setout", "From anchor to anchor")]
    [InlineData("cut", "the solver gives back")]
    [InlineData("tighten", "Last round")]
    public async Task Each_build_paper_is_a_command_of_its_own(string command, string said)
    {
        var run = await Cli.Start(command);

        Assert.Equal(0, run.ExitCode);
        Assert.Contains(said, run.Output);
    }
}
