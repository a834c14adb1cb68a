using System.Collections.Immutable;
using Mastwright.Catalog;
using Mastwright.Model.Design;
using Mastwright.Structure.Chains;

namespace Mastwright.Analysis.Stand;

/// <summary>The guys of a design as chains of the real pieces its fittings name.</summary>
public static class GuyChains
{
    private const string Zinc = "zinc coat";

    /// <summary>Where an insulator sits that the file gives no place, m from the mast.</summary>
    public const double NearestInsulatorM = 0.3;

    /// <summary>Inside length of a guy's shackle, m: as measured, or of its catalogue row.</summary>
    public static double ShackleM(GuyHardware hardware) => hardware.ShackleLengthM ?? Catalogue.Default.Shackles[hardware.Shackle].InsideLengthM;

    /// <summary>Length of a turnbuckle between its pins at the opening it is set to, m.</summary>
    public static double TurnbuckleM(GuyHardware hardware) =>
        ClosedM(hardware) + (hardware.TurnbuckleOpen * Catalogue.Default.Turnbuckles[hardware.Turnbuckle].TakeUpM);

    private static double ClosedM(GuyHardware hardware) => hardware.TurnbuckleLengthM ?? Catalogue.Default.Turnbuckles[hardware.Turnbuckle].ClosedLengthM;

    /// <summary>The pieces from the anchor up.</summary>
    /// <param name="guy">The guy.</param>
    /// <param name="design">Its level in the design.</param>
    /// <param name="hardware">Its fittings.</param>
    public static ImmutableArray<ChainPiece> Of(ModelGuy guy, GuyLevel design, GuyHardware hardware)
    {
        var shackle = Catalogue.Default.Shackles[hardware.Shackle];
        var turnbuckle = Catalogue.Default.Turnbuckles[hardware.Turnbuckle];
        var insulator = Catalogue.Default.StrainInsulators[design.Insulator];
        var metal = Surface(hardware.Metal);
        var places = design.InsulatorsAtM.IsEmpty ? [NearestInsulatorM] : design.InsulatorsAtM.Order().Reverse().ToArray();
        var egg = insulator.Kind.Contains("egg", StringComparison.OrdinalIgnoreCase);
        var list = new List<ChainPiece>
        {
            // The anchor's own strength is checked with the anchor, the mast's lug with the mast's maker.
            new AnchorEye("anchor eye", double.PositiveInfinity),
            Shackle(shackle, hardware),
            new TurnbucklePiece(turnbuckle.Name, turnbuckle.BreakingN, turnbuckle.TakeUpM)
            {
                ClosedLengthM = ClosedM(hardware),
                AnodicIndexV = metal.AnodicIndexV,
                OpenShare = hardware.TurnbuckleOpen,
                Locked = hardware.TurnbuckleLocked,
                HasHook = turnbuckle.Ends.Contains("hook", StringComparison.OrdinalIgnoreCase),
                WorkingLoadN = turnbuckle.WorkingLoadN,
                Metal = metal.Name,
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

            // Between two insulators, from middle to middle; the piece at the anchor takes what is left.
            double? length = piece == 0 ? null : Math.Max(0, places[piece - 1] - (piece < cuts ? places[piece] : 0) - (egg ? 0 : insulator.LengthM * (piece < cuts ? 1 : 0.5)));
            AddStrand(list, guy.Strand, hardware, bottomEye: piece == 0 || !egg, topEye: piece == cuts || !egg, top: piece == cuts, length);
        }

        list.Add(Shackle(shackle, hardware));
        list.Add(new MastAttachment("mast lug", hardware.Lug is { } lug ? PlateOf(lug).BreakingN : double.PositiveInfinity));
        return [.. list];
    }

    private static void AddStrand(List<ChainPiece> list, GuyStrand strand, GuyHardware hardware, bool bottomEye, bool topEye, bool top, double? lengthM)
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
        list.Add(new StrandPiece(strand.Name, strand.BreakingN, strand.DiameterM, strand.AreaM2 * strand.ModulusPa) { FixedLengthM = lengthM, MassKgPerM = strand.MassKgPerM, Metal = Zinc, AnodicIndexV = Catalogue.Default.Metals[Zinc].AnodicIndexV });
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
                ClipTorqueNm = hardware.ClipTorqueNm ?? clip?.TorqueNm,
            },
            StrandEnd.Swaged => new EndFitting("swaged sleeve", EndFittingKind.Swaged, strand.DiameterM, 0.95),
            StrandEnd.Socket => new EndFitting("socket", EndFittingKind.Socket, strand.DiameterM, 1),
            _ => new EndFitting("preformed grip", EndFittingKind.WrappedGrip, strand.DiameterM,
                Catalogue.Default.Grips.All.FirstOrDefault(g => Math.Abs(g.StrandM - strand.DiameterM) < 1e-4)?.Efficiency ?? 1)
            { BackUpClip = backUp },
        };
    }

    private static ShacklePiece Shackle(Shackle row, GuyHardware hardware)
    {
        var metal = Surface(hardware.Metal);
        return new(row.Name, row.BreakingN)
        {
            LengthM = ShackleM(hardware),
            PinSecured = hardware.PinsSecured,
            SideLoaded = hardware.SideLoaded,
            WorkingLoadN = row.WorkingLoadN,
            Metal = metal.Name,
            AnodicIndexV = metal.AnodicIndexV,
        };
    }

    /// <summary>A plate with a hole as the structure sees it.</summary>
    public static LugPlate PlateOf(LugSpec lug) => new(
        lug.ThicknessM, lug.WidthM, lug.HoleM, lug.PinM ?? (lug.HoleM - 0.001), lug.EndDistanceM ?? ((lug.WidthM - lug.HoleM) / 2), MastSections.Metal(lug.Metal));

    private static Metal Surface(FittingMetal metal) => Catalogue.Default.Metals[metal switch { FittingMetal.Stainless => "stainless 316", FittingMetal.Bronze => "bronze", _ => Zinc }];
}
