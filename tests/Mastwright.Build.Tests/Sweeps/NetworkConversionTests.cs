using System.Collections.Immutable;
using System.Numerics;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Mastwright.Build.Sweeps;
using Mastwright.Build.Sweeps.Touchstone;

namespace Mastwright.Build.Tests.Sweeps;

public class NetworkConversionTests
{
    private static double Distance(NetworkData a, NetworkData b) =>
        a.Points.Zip(b.Points).Max(p => p.First.Matrix.Zip(p.Second.Matrix).Max(e => (e.First - e.Second).Magnitude));

    // A lossy two-port: each entry inside the unit circle and the matrix well away from singular 1 ± S.
    private static NetworkData TwoPort(int seed)
    {
        var random = new Random(seed);
        Complex Entry() => Complex.FromPolarCoordinates(0.45 * random.NextDouble(), 2 * Math.PI * random.NextDouble());
        return new(NetworkParameter.S, [50, 75], [.. Enumerable.Range(1, 3).Select(i => new NetworkPoint(i * 1e6, [Entry(), Entry(), Entry(), Entry()]))], []);
    }

    [Property]
    public bool Every_parameter_turns_back_into_scattering(int seed) =>
        Enum.GetValues<NetworkParameter>().All(p => Distance(TwoPort(seed), TwoPort(seed).To(p).To(NetworkParameter.S)) < 1e-9);

    [Property]
    public bool Hybrid_parameters_obey_their_definition(int seed)
    {
        // From the defining equations: h11 = det(Z)/z22, h12 = z12/z22, h21 = −z21/z22, h22 = 1/z22; G is the inverse of H.
        var two = TwoPort(seed);
        var z = two.To(NetworkParameter.Z).Points[0].Matrix;
        var h = two.To(NetworkParameter.H).Points[0].Matrix;
        var g = two.To(NetworkParameter.G).Points[0].Matrix;
        var y = two.To(NetworkParameter.Y).Points[0].Matrix;
        var det = (z[0] * z[3]) - (z[1] * z[2]);
        Complex[] expected = [det / z[3], z[1] / z[3], -z[2] / z[3], 1 / z[3]];
        var hOk = expected.Zip(h).All(p => (p.First - p.Second).Magnitude < 1e-8 * (1 + p.First.Magnitude));
        var dh = (h[0] * h[3]) - (h[1] * h[2]);
        Complex[] inverse = [h[3] / dh, -h[1] / dh, -h[2] / dh, h[0] / dh];
        var gOk = inverse.Zip(g).All(p => (p.First - p.Second).Magnitude < 1e-6 * (1 + p.First.Magnitude));
        Complex[] admittance = [z[3] / det, -z[1] / det, -z[2] / det, z[0] / det];
        return hOk && gOk && admittance.Zip(y).All(p => (p.First - p.Second).Magnitude < 1e-8);
    }

    [Property]
    public bool A_change_of_reference_leaves_the_impedances_alone(int seed)
    {
        var two = TwoPort(seed);
        return Distance(two.To(NetworkParameter.Z), two.WithReference([200, 12.5]).To(NetworkParameter.Z)) < 1e-6;
    }

    [Fact]
    public void A_series_resistor_has_the_textbook_scattering_parameters()
    {
        // Series Z between equal references R: S11 = Z/(Z + 2R), S21 = 2R/(Z + 2R) (Pozar, Microwave Engineering, ch. 4, from memory).
        var y = new NetworkData(NetworkParameter.Y, [50, 50], [new(1e6, [0.01, -0.01, -0.01, 0.01])], []);
        var s = y.To(NetworkParameter.S).Points[0].Matrix;
        Assert.Equal(0.5, s[0].Real, 12);
        Assert.Equal(0.5, s[1].Real, 12);
    }

    [Property]
    public bool Writing_and_reading_returns_the_same_numbers(int seed)
    {
        var random = new Random(seed);
        var ports = random.Next(1, 6);
        var parameter = ports == 2 ? (NetworkParameter)random.Next(5) : (NetworkParameter)random.Next(3);
        var reference = Enumerable.Range(0, ports).Select(i => random.Next(2) == 0 ? 50.0 : 50 + (25 * i)).ToImmutableArray();
        var data = new NetworkData(parameter, reference, [.. Enumerable.Range(1, 4).Select(i => new NetworkPoint(i * 1.1e6 * (1 + random.NextDouble() * 0.1), [.. Enumerable.Range(0, ports * ports).Select(_ => new Complex(random.NextDouble() - 0.5, random.NextDouble() - 0.5))]))], []);
        return
            (from version in Enum.GetValues<TouchstoneVersion>()
             from form in Enum.GetValues<NumberForm>()
             from unit in (double[])[1, 1e3, 1e6, 1e9]
             let text = TouchstoneWriter.Write(data, new(version, form, unit, ["a comment"]))
             let read = TouchstoneReader.Read(text, new($"x.s{ports}p"))
             select read.IsUsable && read.Value!.Data.Parameter == parameter && read.Value.Data.ReferenceOhm.SequenceEqual(reference)
                 && Distance(data, read.Value.Data) < 1e-12 && data.Points.Zip(read.Value.Data.Points).All(p => Math.Abs(p.First.FrequencyHz - p.Second.FrequencyHz) < 1e-9 * p.First.FrequencyHz)).All(ok => ok);
    }

    [Fact]
    public void Silence_can_be_written_in_decibels()
    {
        var data = NetworkData.OnePort(NetworkParameter.S, 50, [(1e6, 0), (2e6, 1)]);
        var read = TouchstoneReader.Read(TouchstoneWriter.Write(data, new(Form: NumberForm.DecibelAngle)), new("x.s1p")).Value!.Data;
        Assert.True(read.Points[0].Matrix[0].Magnitude < 1e-100);
        Assert.Equal(1, read.Points[1].Matrix[0].Real, 12);
    }

    [Property]
    public bool No_text_whatever_makes_the_reader_throw(string? text, bool option)
    {
        var reading = TouchstoneReader.Read((option ? "# MHz S RI R 50\n" : "") + text, new("x.s1p"));
        return reading.IsUsable || reading.Errors.Any();
    }

    [Property]
    public FsCheck.Property A_good_file_cut_anywhere_loses_only_its_end(int seed)
    {
        var data = TwoPort(seed);
        var text = TouchstoneWriter.Write(data);
        return Prop.ForAll(Gen.Choose(0, text.Length).ToArbitrary(), cut =>
        {
            var reading = TouchstoneReader.Read(text[..cut], new("x.s2p"));
            if (!reading.IsUsable) return text[..cut].Count(c => c == '\n') < 3;
            var last = cut == 0 || text[cut - 1] == '\n' || cut == text.Length ? reading.Value!.Data.Points : reading.Value!.Data.Points[..^1];
            return last.Zip(data.Points).All(p => Math.Abs(p.First.FrequencyHz - p.Second.FrequencyHz) < 1);
        });
    }
}
