using System.Collections.Immutable;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;
using WindCase = Mastwright.Structure.Loads.LoadCase;

namespace Mastwright.Analysis.Stand;

/// <summary>The wind at one height of the mast.</summary>
/// <param name="HeightM">Height above ground, m.</param>
/// <param name="Pressure">Velocity pressure there.</param>
/// <param name="Drag">Force coefficient of the mast, wind square to a face.</param>
/// <param name="PerM">Force per length, conduits included.</param>
/// <param name="IcedPerM">Force per length with ice and its wind; null without ice.</param>
/// <param name="IceNPerM">Weight of ice per length, N/m; 0 without ice.</param>
/// <param name="Reynolds">Reynolds number of a tube in the gust; null for a lattice.</param>
public sealed record WindAtHeight(double HeightM, Trail Pressure, Trail Drag, Trail PerM, Trail? IcedPerM, double IceNPerM, double? Reynolds);

/// <summary>The force on a lattice by where the wind comes from.</summary>
/// <param name="FromRad">Compass bearing the wind comes from, rad.</param>
/// <param name="OffFaceRad">Angle to the normal of the nearest face, rad.</param>
/// <param name="Drag">Force coefficient.</param>
/// <param name="PerM">Force per length at the middle of the run.</param>
public sealed record WindFrom(double FromRad, double OffFaceRad, Trail Drag, Trail PerM);

/// <summary>Wind and ice on the guys of a level.</summary>
/// <param name="Level">The level, from 1.</param>
/// <param name="Strand">Its strand.</param>
/// <param name="PerM">Wind per length of the guy, wind along its own bearing.</param>
/// <param name="AcrossPerM">Wind per length, wind across its bearing.</param>
/// <param name="IcedPerM">The same across with ice and its wind; null without ice.</param>
/// <param name="IceNPerM">Weight of ice per length; 0 without ice.</param>
/// <param name="WeightNPerM">Its own weight per length.</param>
public sealed record WindOnGuy(int Level, string Strand, Trail PerM, Trail AcrossPerM, Trail? IcedPerM, double IceNPerM, double WeightNPerM);

/// <summary>Wind and ice on a mast before anything is solved: profile over height, drag, guys.</summary>
/// <param name="Method">The wind method with its edition.</param>
/// <param name="Ice">The ice method; null without ice.</param>
/// <param name="Gust">The gust factor used.</param>
/// <param name="Factor">Factor on wind and ice loads.</param>
/// <param name="Heights">From the foot up.</param>
/// <param name="Lattice">Solidity and drag by direction of the lowest lattice run; empty for tubes.</param>
/// <param name="Solidity">Its solidity, bare; null for tubes.</param>
/// <param name="IcedSolidity">Its solidity with ice; null for tubes or without ice.</param>
/// <param name="Guys">Level by level.</param>
/// <param name="Layer">Ice at the mast's top; null without ice.</param>
public sealed record WindPicture(
    string Method, string? Ice, Trail Gust, double Factor, ImmutableArray<WindAtHeight> Heights, ImmutableArray<WindFrom> Lattice, Trail? Solidity, Trail? IcedSolidity, ImmutableArray<WindOnGuy> Guys, IceLayer? Layer)
{
    private const int Rows = 11;

    /// <summary>Draws it up.</summary>
    /// <param name="station">The station.</param>
    /// <param name="mast">The mast.</param>
    /// <param name="gust">Gust factor worked out for a slow mast; null for the method's own.</param>
    public static WindPicture Of(Station station, Mast mast, Trail? gust)
    {
        var model = StandModel.Of(station, mast);
        var method = LoadCases.MethodOf(station.Site.Wind.Method);
        var wind = LoadCases.WindOf(station.Site);
        wind = wind with { GustTrail = wind.GustFactor is null ? gust : null };
        var ice = station.Site.Ice.ThicknessM > 0 ? new LoadCases(station, model, gust).IceOf() : null;
        var heights = Enumerable.Range(0, Rows).Select(i => mast.LengthM * i / (Rows - 1)).Select(h => At(model, method, wind, ice, h)).ToImmutableArray();
        var lattice = model.Runs.FirstOrDefault(r => r.Lattice is not null);
        var shape = lattice?.Shape as LatticeShape;
        var thickness = ice?.Method.At(ice.Site, mast.TopM).Thickness;
        return new WindPicture(
            method.Name, ice?.Method.Name, method.GustFactor(wind), LoadCases.FactorOf(station), heights,
            shape is null ? [] : [.. Around(mast, method, wind, lattice!, shape)], shape?.Solidity(shape.SolidAreaPerM(null), null),
            shape is null || thickness is null ? null : shape.Solidity(shape.SolidAreaPerM(thickness), thickness), [.. model.Guys.DistinctBy(g => g.Level).Select(g => OnGuy(model, method, wind, ice, g))],
            ice?.Method.At(ice.Site, mast.TopM));
    }

    private static WindAtHeight At(StandModel model, IWindMethod method, WindSite wind, IceCase? ice, double aboveFootM)
    {
        var run = model.Runs.First(r => aboveFootM <= r.TopM + 1e-9);
        var height = aboveFootM + model.Mast.Base.HeightM;
        var along = model.AlongAt(aboveFootM);
        var pressure = method.Pressure(wind, height, run.Tube is null ? BodyKind.Lattice : BodyKind.Tube);
        var load = new WindCase(method, wind, new WindDirection(0));
        var drag = run.Shape is LatticeShape l ? method.LatticeDrag(l.Solidity(l.SolidAreaPerM(null), null), l, 0) : method.TubeDrag((TubeShape)run.Shape, pressure);
        return new WindAtHeight(
            height, pressure, drag, MastLoads.Wind(load, run.Shape, height, along).Magnitude, ice is null ? null : MastLoads.Wind(load with { Ice = ice }, run.Shape, height, along).Magnitude,
            ice is null ? 0 : MastLoads.Ice(ice, run.Shape, height, along).Magnitude.Value, run.Tube is { } tube ? tube.OuterDiameterM * Math.Sqrt(2 * pressure.Value / wind.AirDensityKgPerM3) / Air.KinematicViscosityM2PerS : null);
    }

    private static IEnumerable<WindFrom> Around(Mast mast, IWindMethod method, WindSite wind, MastRun run, LatticeShape shape)
    {
        var height = mast.Base.HeightM + ((run.BottomM + run.TopM) / 2);
        var solidity = shape.Solidity(shape.SolidAreaPerM(null), null);
        foreach (var direction in WindDirection.Around(LoadCases.Directions))
        {
            var off = shape.ToFaceNormal(direction.FromAzimuthRad + Math.PI);
            yield return new WindFrom(direction.FromAzimuthRad, off, method.LatticeDrag(solidity, shape, off), MastLoads.Wind(new WindCase(method, wind, direction), shape, height).Magnitude);
        }
    }

    private static WindOnGuy OnGuy(StandModel model, IWindMethod method, WindSite wind, IceCase? ice, ModelGuy guy)
    {
        var high = StandModel.FootOf(model.Mast) + (guy.Guy.AttachmentHeightM * Numerics.Vec3.Up);
        var along = new WindCase(method, wind, new WindDirection(guy.Anchor.BearingRad));
        var across = new WindCase(method, wind, new WindDirection(guy.Anchor.BearingRad + (Math.PI / 2)));
        return new WindOnGuy(
            guy.Level, guy.Strand.Name, CableLoads.Wind(along, guy.Guy.AnchorM, high, guy.Strand.DiameterM).Magnitude, CableLoads.Wind(across, guy.Guy.AnchorM, high, guy.Strand.DiameterM).Magnitude,
            ice is null ? null : CableLoads.Wind(across with { Ice = ice }, guy.Guy.AnchorM, high, guy.Strand.DiameterM).Magnitude,
            ice is null ? 0 : CableLoads.Ice(ice, guy.Guy.AnchorM, high, guy.Strand.DiameterM).Magnitude.Value, guy.Guy.Cable.WeightNPerM);
    }
}
