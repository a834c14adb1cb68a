using System.Collections.Immutable;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Lines;

/// <summary>Where the transmitter's power goes on its way to the sky.</summary>
/// <param name="Stages">The stages in order, each with what it takes, W.</param>
/// <param name="Radiated">Power radiated, W.</param>
/// <param name="Efficiency">Radiated power over transmitter power.</param>
public sealed record PowerBudget(ImmutableArray<Trail> Stages, Trail Radiated, Trail Efficiency)
{
    /// <summary>Adds the stages up.</summary>
    /// <param name="transmitterW">Transmitter power, watts.</param>
    /// <param name="stages">Each stage's name and its loss in dB, from the transmitter on.</param>
    /// <param name="antennaEfficiency">Radiated power over power into the mast, earth loss included.</param>
    public static PowerBudget Of(double transmitterW, IEnumerable<(string Name, double LossDb)> stages, double antennaEfficiency)
    {
        var page = Source.Derived("docs/theory/circuits-lines.md");
        var rest = Trail.Given("transmitter power", "P", transmitterW, QuantityKind.Power, new("the problem as stated", SourceKind.Design));
        var taken = ImmutableArray.CreateBuilder<Trail>();
        foreach (var (name, lossDb) in stages)
        {
            var loss = Trail.Given("loss in the " + name, "A", lossDb, QuantityKind.Decibel, page);
            taken.Add(Trail.Computed("power lost in the " + name, "Pl", rest.Value * (1 - Math.Pow(10, -lossDb / 10)), QuantityKind.Power, "Pl = P·(1 - 10^(-A/10))", page, rest, loss));
            rest = Trail.Computed("power after the " + name, "P", rest.Value * Math.Pow(10, -lossDb / 10), QuantityKind.Power, "P·10^(-A/10)", page, rest, loss);
        }

        var eta = Trail.Given("antenna efficiency", "η", antennaEfficiency, QuantityKind.Ratio, new("the antenna model", SourceKind.Derived));
        taken.Add(Trail.Computed("power lost in earth and mast", "Pl", rest.Value * (1 - antennaEfficiency), QuantityKind.Power, "Pl = P·(1 - η)", page, rest, eta));
        var radiated = Trail.Computed("power radiated", "Pr", rest.Value * antennaEfficiency, QuantityKind.Power, "Pr = P·η", page, rest, eta);
        return new(taken.ToImmutable(), radiated, Trail.Computed("efficiency from transmitter to sky", "ηt", radiated.Value / transmitterW, QuantityKind.Ratio, "ηt = Pr/P", page, radiated));
    }
}
