using Mastwright.Model.Design;

namespace Mastwright.Model.Tests;

/// <summary>What a mast says of itself.</summary>
public class MastTests
{
    [Theory]
    [InlineData(0.2, "lower")]
    [InlineData(3.5, "lower")]
    [InlineData(3.6, "upper")]
    [InlineData(7.5, "upper")]
    [InlineData(100, "upper")]
    public void A_height_belongs_to_one_section_and_a_joint_to_the_lower(double heightM, string lattice)
    {
        var mast = new Mast { Base = new MastBase { HeightM = 0.5 }, Sections = [new Section { LengthM = 3, Lattice = "lower" }, new Section { LengthM = 4, Lattice = "upper" }] };
        Assert.Equal(lattice, mast.SectionAt(heightM).Lattice);
    }
}
