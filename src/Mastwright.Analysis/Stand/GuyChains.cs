using System.Collections.Immutable;
using Mastwright.Catalog;
using Mastwright.Model.Design;
using Mastwright.Structure.Chains;

namespace Mastwright.Analysis.Stand;

/// <summary>The guys of a design as chains of the real pieces its fittings name.</summary>
public static class GuyChains
{
    /// <summary>The pieces from the anchor up.</summary>
    /// <param name="guy">The guy.</param>
    /// <param name="design">Its level in the design.</param>
    /// <param name="hardware">Its fittings.</param>
    public static ImmutableArray<ChainPiece> Of(ModelGuy guy, GuyLevel design, GuyHardware hardware)
    {
        var shackle = Catalogue.Default.Shackles[hardware.Shackle];
        var turnbuckle = Catalogue.Default.Turnbuckles[hardware.Turnbuckle];
        var insulator = Catalogue.Default.StrainInsulators[design.Insulator];
        var egg = insulator.Kind.Contains("egg", StringComparison.OrdinalIgnoreCase);
        var list = new List<ChainPiece>
        {
            // The anchor's own strength is checked with the anchor, the mast's lug with the mast's maker.
            new AnchorEye("anchor eye", double.PositiveInfinity),
            Shackle(shackle, hardware),
            new TurnbucklePiece(turnbuckle.Name, turnbuckle.BreakingN, turnbuckle.TakeUpM)
            {
                OpenShare = hardware.TurnbuckleOpen,
                Locked = hardware.TurnbuckleLocked,
                HasHook = turnbuckle.Ends.Contains("hook", StringComparison.OrdinalIgnoreCase),
                WorkingLoadN = turnbuckle.WorkingLoadN,
                Metal = "zinc coat",
            },
        };

        // From the anchor up: the insulators stand in the file from the mast down.
        var cuts = Math.Max(1, design.InsulatorsAtM.Length);
        for (var piece = 0; piece <= cuts; piece++)
        {
            if (piece > 0)
            {
                list.Add(new InsulatorPiece(insulator.Name, insulator.StrengthN, egg) { LengthM = insulator.LengthM });
            }

            AddStrand(list, guy.Strand, hardware, bottomEye: piece == 0 || !egg, topEye: piece == cuts || !egg, top: piece == cuts, last: piece == 0);
        }

        list.Add(Shackle(shackle, hardware));
        list.Add(new MastAttachment("mast lug", double.PositiveInfinity));
        return [.. list];
    }

    private static void AddStrand(List<ChainPiece> list, GuyStrand strand, GuyHardware hardware, bool bottomEye, bool topEye, bool top, bool last)
    {
        void Eye()
        {
            if (hardware.Thimbles != ThimblePattern.None)
            {
                list.Add(new ThimblePiece($"{hardware.Thimbles.ToString().ToLowerInvariant()} thimble", strand.DiameterM, hardware.Thimbles == ThimblePattern.Heavy));
            }
        }

        if (bottomEye)
        {
            Eye();
        }

        list.Add(End(strand, hardware, backUp: false));
        list.Add(new StrandPiece(strand.Name, strand.BreakingN, strand.DiameterM, strand.AreaM2 * strand.ModulusPa) { FixedLengthM = last ? null : 0, Metal = "zinc coat" });
        list.Add(End(strand, hardware, backUp: top && hardware.BackUpClip));
        if (topEye)
        {
            Eye();
        }
    }

    private static EndFitting End(GuyStrand strand, GuyHardware hardware, bool backUp)
    {
        var clip = Catalogue.Default.Clips.All.Where(c => c.RopeM >= strand.DiameterM - 1e-6).MinBy(c => c.RopeM);
        return hardware.EndFitting switch
        {
            StrandEnd.Clips => new EndFitting("U-bolt clips", EndFittingKind.Clips, strand.DiameterM, clip?.Efficiency ?? 0.8)
            {
                Clips = hardware.Clips,
                ClipsNeeded = clip?.ClipsForStrand ?? 4,
                ClipTorqueNeededNm = clip?.TorqueNm ?? 0,
            },
            StrandEnd.Swaged => new EndFitting("swaged sleeve", EndFittingKind.Swaged, strand.DiameterM, 0.95),
            StrandEnd.Socket => new EndFitting("socket", EndFittingKind.Socket, strand.DiameterM, 1),
            _ => new EndFitting("preformed grip", EndFittingKind.WrappedGrip, strand.DiameterM,
                Catalogue.Default.Grips.All.FirstOrDefault(g => Math.Abs(g.StrandM - strand.DiameterM) < 1e-4)?.Efficiency ?? 1)
            { BackUpClip = backUp },
        };
    }

    private static ShacklePiece Shackle(Shackle row, GuyHardware hardware) =>
        new(row.Name, row.BreakingN) { PinSecured = hardware.PinsSecured, WorkingLoadN = row.WorkingLoadN, Metal = "zinc coat" };
}
