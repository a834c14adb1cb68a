using Mastwright.Model.Trails;
using Mastwright.Protection.Metals;

namespace Mastwright.Protection.Tests.Metals;

/// <summary>Pairs by the anodic index rule (reprinted table), and the trade's own rules (common practice, no source).</summary>
public class MetalContactsTests
{
    private static readonly Source Reprint = Source.Literature("anodic index table, as reprinted");
    private static readonly ContactMetal Copper = new("copper", MetalFamily.Copper, 0.35, Reprint);
    private static readonly ContactMetal Zinc = new("galvanised steel", MetalFamily.Zinc, 1.20, Reprint);
    private static readonly ContactMetal Aluminium = new("aluminium 6061", MetalFamily.Aluminium, 0.90, Reprint);
    private static readonly ContactMetal Stainless = new("stainless 304", MetalFamily.Stainless, 0.50, Reprint);
    private static readonly ContactMetal Tin = new("tinned copper", MetalFamily.Tin, 0.65, Reprint);
    private static readonly ContactMetal Brass = new("brass", MetalFamily.Copper, 0.45, Reprint);

    private static Check Pair(ContactMetal a, ContactMetal b, ContactEnvironment environment, JointBarrier barrier = JointBarrier.None) =>
        MetalContacts.For(new("joint", a, b, environment, JointKind.Clamped, barrier)).First();

    // Outdoors by this rule aluminium to stainless .40, to copper .55, to zinc .30, to tin .25 and zinc to copper .85 all fail .15.
    [Fact]
    public void Outdoor_pairs_of_the_rule()
    {
        foreach (var (a, b, volts) in new[] { (Aluminium, Stainless, .40), (Aluminium, Copper, .55), (Zinc, Copper, .85), (Aluminium, Zinc, .30), (Aluminium, Tin, .25) })
        {
            var check = Pair(a, b, ContactEnvironment.Harsh);
            Assert.Equal(volts, check.Demand.Value, 1e-9);
            Assert.Equal(Verdict.Fail, check.Verdict);
            Assert.NotEmpty(check.Cure);
        }

        Assert.NotEqual(Verdict.Fail, Pair(Copper, Brass, ContactEnvironment.Harsh).Verdict);
        Assert.NotEqual(Verdict.Fail, Pair(Aluminium, Stainless, ContactEnvironment.Controlled).Verdict);
    }

    [Fact]
    public void The_order_of_the_pair_does_not_matter() =>
        Assert.Equal(Pair(Copper, Zinc, ContactEnvironment.Harsh).Ratio, Pair(Zinc, Copper, ContactEnvironment.Harsh).Ratio);

    [Fact]
    public void A_barrier_asks_for_inspection_instead()
    {
        var check = Pair(Copper, Zinc, ContactEnvironment.Harsh, JointBarrier.TransitionMetal);
        Assert.Equal(Verdict.Caution, check.Verdict);
        Assert.Contains("galvanised steel is the metal that goes", check.Cure);
    }

    [Fact]
    public void Cure_for_radial_clamps_is_stainless_between() =>
        Assert.Contains("stainless", Pair(Copper, Zinc, ContactEnvironment.Harsh).Cure);

    [Theory]
    [InlineData(JointKind.InConcrete, JointBarrier.None, "concrete", Verdict.Fail)]
    [InlineData(JointKind.InConcrete, JointBarrier.Insulation, "concrete", Verdict.Pass)]
    public void Aluminium_and_wet_concrete(JointKind joint, JointBarrier barrier, string rule, Verdict verdict)
    {
        var check = Assert.Single(MetalContacts.For(new("base plate", Aluminium, Aluminium, ContactEnvironment.Harsh, joint, barrier)));
        Assert.Contains(rule, check.Id);
        Assert.Equal(verdict, check.Verdict);
    }

    [Fact]
    public void Stainless_seizes_in_aluminium_threads()
    {
        Check Thread(JointBarrier b) => MetalContacts.For(new("step bolt", Stainless, Aluminium, ContactEnvironment.Harsh, JointKind.Thread, b)).Single(c => c.Id.Contains("thread"));
        Assert.Equal(Verdict.Fail, Thread(JointBarrier.None).Verdict);
        Assert.Equal(Verdict.Pass, Thread(JointBarrier.AntiSeize).Verdict);
    }

    [Fact]
    public void Copper_above_zinc_and_copper_bonded_to_an_anchor()
    {
        Assert.Contains(MetalContacts.For(new("feed strap", Copper, Zinc, ContactEnvironment.Harsh, JointKind.RunoffAbove)), c => c.Id.Contains("runoff") && c.Verdict == Verdict.Fail);
        Assert.DoesNotContain(MetalContacts.For(new("feed strap", Zinc, Copper, ContactEnvironment.Harsh, JointKind.RunoffAbove)), c => c.Id.Contains("runoff"));
        Assert.Contains(MetalContacts.For(new("anchor", Copper, Zinc, ContactEnvironment.Buried, JointKind.BondedThroughSoil)), c => c.Id.Contains("soil") && c.Cure.Contains("insulator"));
    }

    [Fact]
    public void Bare_aramid_ages_in_the_sun()
    {
        Assert.Equal(Verdict.Fail, MetalContacts.All([], [new("upper guys", "aramid", false, 1)])[0].Verdict);
        Assert.Equal(Verdict.Pass, MetalContacts.All([], [new("upper guys", "aramid", true, 1)])[0].Verdict);
    }
}
