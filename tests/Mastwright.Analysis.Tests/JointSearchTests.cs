using Mastwright.Analysis.Stand;
using Mastwright.Analysis.Stand.Search;
using Mastwright.Catalog;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Tests.Shared;

namespace Mastwright.Analysis.Tests;

/// <summary>Searches over several inputs at once, fittings that follow the strand, and the lines they write into the file.</summary>
public class JointSearchTests
{
    private static readonly string Lattice = File.ReadAllText(Repository.File("examples", "lattice-22m.yaml")).ReplaceLineEndings("\n");

    // One piece of tube, one level of guys with fittings: small enough to search quickly.
    private static readonly string Small = File.ReadAllText(Repository.File("examples", "tube-12m.yaml")).ReplaceLineEndings("\n")
        .Replace("      - { length: 20 ft, tube: { diameter: 4 in, wall: 1/8 in, metal: 6061-T6 } }\n      - {", "      - {")
        .Replace("      - height: 18 ft\n        strand: 3/16 in EHS\n        initial-tension: 10 %\n        insulators-at: [1 ft, 10 ft, 20 ft]\n        insulator: ANSI 54-1\n        hardware: { shackle: 3/8 in screw-pin shackle, turnbuckle: 3/8x6 in jaw-eye turnbuckle }\n", "")
        .Replace("height: 36 ft\n", "height: 19 ft\n").Replace("[1 ft, 10 ft, 20 ft, 30 ft]", "[1 ft, 8 ft]");

    [Fact]
    public void What_the_joint_search_offers_passes_when_read_back_and_costs_no_more_than_strand_alone()
    {
        var cancellation = TestContext.Current.CancellationToken;
        var reading = Examples.Read(Small);
        var results = StandSearch.Run(reading.Station!, 0, [SearchGoal.Joint, SearchGoal.Strand], cancellation: cancellation);
        var (joint, strand) = (results[0], results[1]);

        Assert.NotNull(joint.Best);
        Assert.NotNull(strand.Best);
        Assert.True(joint.Front[0].Cost <= strand.Best.Cost + 1e-9, $"{joint.Front[0].Cost} against {strand.Best.Cost}");
        Assert.All(joint.Front.Zip(joint.Front.Skip(1)), p => Assert.True(p.Second.Cost >= p.First.Cost && p.Second.Margin > p.First.Margin));

        var edited = Examples.Read(DesignEdit.Apply(Small, reading.Places, joint.Best.Candidate.Changes)).Station!;
        var again = StandRun.Of(edited, edited.Masts[0], cancellation);
        Assert.DoesNotContain(again.Checks, c => c.Verdict == Verdict.Fail);
        Assert.Equal(joint.Best.Use, again.Checks.Single(c => c.Id == joint.Best.Worst!.Id).Ratio, 1e-6);
    }

    /// <summary>Trade rule: every piece develops the full strand (common practice, no source).</summary>
    [Theory]
    [InlineData("1/8 in EHS")]
    [InlineData("1/4 in EHS")]
    [InlineData("3/8 in EHS")]
    public void Fittings_develop_the_strand_they_were_chosen_for(string strand)
    {
        var level = Examples.Read(Lattice).Station!.Masts[0].Guys[0];
        var changed = Fittings.For(level, strand);

        Assert.NotNull(changed);
        var breaking = Catalogue.Default.Strands[strand].BreakingN;
        Assert.True(Catalogue.Default.Shackles[changed.Hardware!.Shackle].BreakingN >= breaking);
        Assert.True(Catalogue.Default.Turnbuckles[changed.Hardware.Turnbuckle].BreakingN >= breaking);
        Assert.True(Catalogue.Default.StrainInsulators[changed.Insulator].StrengthN >= breaking);
        Assert.Equal("jaw-eye", Catalogue.Default.Turnbuckles[changed.Hardware.Turnbuckle].Ends);
    }

    [Fact]
    public void The_block_of_fewer_levels_reads_back_with_its_fittings_and_passes()
    {
        var cancellation = TestContext.Current.CancellationToken;
        var station = Examples.Read(Lattice).Station!;
        var found = StandSearch.Run(station, 0, SearchGoal.Levels, cancellation: cancellation);
        Assert.NotNull(found.Best);
        var block = string.Join("\n", found.Best.Candidate.Block!.Split('\n').Select(l => "    " + l)) + "\n";
        var text = Lattice[..Lattice.IndexOf("    guys:\n", StringComparison.Ordinal)] + block + Lattice[Lattice.IndexOf("    radials:\n", StringComparison.Ordinal)..];

        var edited = Examples.Read(text).Station!;

        var wanted = found.Best.Candidate.Mast.Guys;
        Assert.Equal(wanted.Select(g => (g.Strand, g.Hardware)), edited.Masts[0].Guys.Select(g => (g.Strand, g.Hardware)));
        Assert.DoesNotContain(StandRun.Of(edited, edited.Masts[0], cancellation).Checks, c => c.Verdict == Verdict.Fail);
        Assert.True(wanted.Length <= station.Masts[0].Guys.Length);
    }

    [Fact]
    public void Fittings_are_written_as_the_file_reads_them()
    {
        var hardware = new GuyHardware
        {
            Shackle = "3/8 in screw-pin shackle",
            ShackleLengthM = 0.041,
            Turnbuckle = "3/8x6 in jaw-eye turnbuckle",
            TurnbuckleLengthM = 0.25,
            EndFitting = StrandEnd.Clips,
            Clips = 4,
            ClipTorqueNm = 20,
            Metal = FittingMetal.Stainless,
            Thimbles = ThimblePattern.Light,
            TurnbuckleOpen = 0.5,
            TurnbuckleLocked = false,
            PinsSecured = false,
            SideLoaded = true,
            BackUpClip = true,
            Lug = new LugSpec { ThicknessM = 0.01, WidthM = 0.06, HoleM = 0.018, EndDistanceM = 0.03 },
        };
        var reading = Examples.Read(DesignEdit.Apply(Small, Examples.Read(Small).Places, [new DesignChange("masts[0].guys[0].hardware", "hardware", HardwareWords.Of(hardware))]));

        var read = reading.Station!.Masts[0].Guys[0].Hardware!;
        Assert.Equal(HardwareWords.Of(hardware), HardwareWords.Of(read));
        Assert.Equal(hardware with { Lug = null, ClipTorqueNm = null }, read with { Lug = null, ClipTorqueNm = null });
        Assert.Equal(hardware.Lug!.HoleM, read.Lug!.HoleM, 1e-12);
        Assert.Equal(0.041, read.ShackleLengthM);
        Assert.Equal(0.25, read.TurnbuckleLengthM);
    }

    /// <summary>Lengths and torque measured on the old pieces do not stay beside the new ones: the catalogue's row of the new piece tells them, and the file reads the same.</summary>
    [Fact]
    public void Another_strand_takes_the_lengths_and_the_torque_of_its_own_fittings()
    {
        var text = Small.Replace("turnbuckle: 3/8x6 in jaw-eye turnbuckle }", "turnbuckle: 3/8x6 in jaw-eye turnbuckle, shackle-length: 41 mm, turnbuckle-length: 250 mm, end-fitting: clips, clips: 3, clip-torque: 12 N·m }", StringComparison.Ordinal);
        var reading = Examples.Read(text);
        var level = reading.Station!.Masts[0].Guys[0];
        Assert.Equal(0.25, level.Hardware!.TurnbuckleLengthM);

        var stronger = Fittings.For(level, "3/8 in EHS")!;

        var (shackle, turnbuckle) = (Catalogue.Default.Shackles[stronger.Hardware!.Shackle], Catalogue.Default.Turnbuckles[stronger.Hardware.Turnbuckle]);
        Assert.NotEqual(level.Hardware.Shackle, shackle.Name);
        Assert.Equal(shackle.InsideLengthM, stronger.Hardware.ShackleLengthM!.Value, 1e-6);
        Assert.Equal(turnbuckle.ClosedLengthM, stronger.Hardware.TurnbuckleLengthM!.Value, 1e-6);

        // Clips for 3/8 in rope take 45 lbf·ft (the usual table of clips, ASME B30.26, from memory).
        Assert.Equal(45 * 4.4482216 * 0.3048, stronger.Hardware.ClipTorqueNm!.Value, 0.6);
        var edited = Examples.Read(DesignEdit.Apply(text, reading.Places, [.. Fittings.Changes("masts[0].guys[0]", level, stronger)])).Station!.Masts[0].Guys[0].Hardware!;
        Assert.Equal(HardwareWords.Of(stronger.Hardware), HardwareWords.Of(edited));

        // What is measured on a piece that stays, stays.
        var same = Fittings.For(level with { Hardware = level.Hardware with { Shackle = shackle.Name, ShackleLengthM = 0.05 } }, "3/8 in EHS")!;
        Assert.Equal(0.05, same.Hardware!.ShackleLengthM);
    }

    /// <summary>
    /// A guy to an anchor far out may carry an insulator farther down it than a guy to a near anchor is long, and near its own end too: the design as it
    /// is must be a start, and where a level's own guys grow shorter past an insulator the move must be dropped.
    /// </summary>
    [Fact]
    public void Insulators_far_down_a_guy_do_not_stop_the_search()
    {
        var station = Examples.Read(Small).Station!;
        var mast = station.Masts[0];
        var level = mast.Guys[0] with { Anchors = ["far 0", "far 90", "far 180", "far 270"] };
        var out2 = mast.Anchors.Select((a, i) => a with { Name = level.Anchors[i], DistanceM = 2 * a.DistanceM });
        mast = mast with { Anchors = [.. mast.Anchors, .. out2] };
        var lengthM = StandModel.AnchorsOf(mast, level).Min(a => double.Hypot(a.DistanceM, level.HeightM - a.RiseM));
        Assert.True(0.9 * lengthM > mast.Anchors.Min(a => double.Hypot(a.DistanceM, level.HeightM - a.RiseM)));
        var far = station with { Masts = [mast with { Guys = [level with { InsulatorsAtM = [0.5, 0.97 * lengthM] }] }] };

        var found = StandSearch.Run(far, 0, SearchGoal.Joint, cancellation: TestContext.Current.CancellationToken);

        Assert.NotEmpty(found.Tried);
        Assert.All(found.Tried.Select(t => t.Candidate.Mast), m => Assert.All(m.Guys, g => Assert.True(
            StandModel.AnchorsOf(m, g).Min(a => double.Hypot(a.DistanceM, g.HeightM - a.RiseM)) >= lengthM - 1e-9)));
    }

    [Theory]
    [InlineData("masts[0].guys[0].initial-tension", "initial-tension", "9 %")]
    [InlineData("masts[0].guys[1].attachment-radius", "attachment-radius", "150 mm")]
    [InlineData("masts[0].anchors[1].rise", "rise", "0.2 m")]
    [InlineData("masts[0].base.hold-down", "hold-down", "3 kN")]
    [InlineData("masts[0].raising.lift-at", "lift-at", "15 m")]
    [InlineData("site.frost-depth", "frost-depth", "0.8 m")]
    [InlineData("site.ice.density", "density", "880 kg/m³")]
    [InlineData("masts[0].guys[0].hardware.clips", "clips", "4")]
    [InlineData("masts[0].base.plate.width", "width", "250 mm")]
    public void A_line_that_is_absent_is_added_and_read_back(string path, string key, string value)
    {
        var reading = Examples.Read(Lattice);
        DesignChange[] changes = path.Contains("plate", StringComparison.Ordinal) ? [new(path, key, value), new("masts[0].base.plate.thickness", "thickness", "20 mm")] : [new(path, key, value)];

        var text = DesignEdit.Apply(Lattice, reading.Places, changes);
        var edited = Examples.Read(text);

        var place = edited.Places[path];
        Assert.StartsWith(value, text.Split('\n')[place.Line - 1][(place.Column - 1)..], StringComparison.Ordinal);
        Assert.All(Lattice.Split('\n').Where(l => l.Contains('#', StringComparison.Ordinal)), l => Assert.Contains(l[l.IndexOf('#', StringComparison.Ordinal)..], text, StringComparison.Ordinal));
    }
}
