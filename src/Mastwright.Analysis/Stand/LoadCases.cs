using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Numerics;
using Mastwright.Structure.Loads;
using SolverCase = Mastwright.Structure.Mast.LoadCase;
using SolverLineLoad = Mastwright.Structure.Mast.LineLoad;
using SolverPointLoad = Mastwright.Structure.Mast.PointLoad;
using WindCase = Mastwright.Structure.Loads.LoadCase;

namespace Mastwright.Analysis.Stand;

/// <summary>A load case with the trail of the wind that made it.</summary>
/// <param name="Case">The case for the solver.</param>
/// <param name="WindPerM">Wind per length of mast at mid-height; null in still air.</param>
public sealed record StandCase(SolverCase Case, Trail? WindPerM)
{
    /// <summary>The case without its wind direction.</summary>
    public string Kind { get; init; } = Case.Name;

    /// <summary>Compass bearing the wind comes from, rad; null in still air.</summary>
    public double? WindFromRad { get; init; }
}

/// <summary>All load combinations of a mast: still air at three temperatures, wind from all round cold and hot, ice with its wind.</summary>
public sealed partial class LoadCases
{
    /// <summary>How many wind directions are looked at.</summary>
    public const int Directions = 24;

    private const double WaterFreezesK = 273.15;
    private const double StepM = 1.5;
    private const double GravityMPerS2 = 9.80665;

    private readonly Station station;
    private readonly StandModel model;
    private readonly IWindMethod method;
    private WindSite wind;
    private readonly double factor;

    internal LoadCases(Station station, StandModel model, Trail? gust = null)
    {
        this.station = station;
        this.model = model;
        method = MethodOf(station.Site.Wind.Method);
        wind = WindOf(station.Site) with { GustTrail = station.Site.Wind.GustFactor is null ? gust : null };
        factor = FactorOf(station);
    }

    /// <summary>Factor on wind and ice.</summary>
    public static double FactorOf(Station station) => station.Limits.WindLoadFactor ?? (station.Site.Wind.Method == WindMethod.En1991 ? 1.5 : 1);

    /// <summary>Every case of a mast.</summary>
    /// <param name="station">The station with its site.</param>
    /// <param name="model">The mast.</param>
    /// <param name="directions">Wind directions; fewer for a first look at many designs.</param>
    /// <param name="gust">Gust factor of a mast too slow for the method's own; null for that.</param>
    public static IReadOnlyList<StandCase> Of(Station station, StandModel model, int directions = Directions, Trail? gust = null)
    {
        var cases = new LoadCases(station, model, gust);
        var site = station.Site;
        var list = new List<StandCase>
        {
            cases.Still("still air, tensioning day", site.TensioningTemperatureK), cases.Still("still air, coldest", site.ColdestK), cases.Still("still air, hottest", site.HottestK),
        };
        foreach (var direction in WindDirection.Around(directions))
        {
            list.Add(cases.Windy("wind, coldest", site.ColdestK, direction, null));
            list.Add(cases.Windy("wind, hottest", site.HottestK, direction, null));
        }

        if (site.Ice.ThicknessM > 0)
        {
            var icy = IcingK(site);
            var ice = cases.IceOf();
            list.Add(cases.Iced("ice, still air", icy, ice));
            list.AddRange(WindDirection.Around(directions).Select(d => cases.Windy("ice and wind", icy, d, ice)));
        }

        return list;
    }

    /// <summary>Temperature of the combinations with ice, K: just below freezing.</summary>
    public static double IcingK(Model.Design.Site site) => Math.Clamp(WaterFreezesK - 2, site.ColdestK, site.HottestK);

    /// <summary>The cases of a storm as it was reported: still air first, then the gust with its ice from one side or from all round.</summary>
    internal static IReadOnlyList<StandCase> Reported(Station station, StandModel model, Keep.ReportedStorm storm)
    {
        var wind = new Wind { Method = WindMethod.Asce7_22, SpeedMPerS = Math.Max(Keep.StormReplay.LeastGustMPerS, storm.GustMPerS ?? 0), Exposure = station.Site.Wind.Exposure };
        var cases = new LoadCases(station with { Site = station.Site with { Wind = wind } }, model);

        // The directionality factor of the code allows for winds that blow past the worst direction; this one blew.
        cases.wind = cases.wind with { Directionality = 1 };
        var ice = storm.IceM > 0
            ? new IceCase(new StatedIce(), new IceSite { NominalThicknessM = storm.IceM, DensityKgPerM3 = station.Site.Ice.DensityKgPerM3, PressureShare = 1 })
            : null;
        var list = new List<StandCase> { cases.Still("still air", storm.TemperatureK) };
        if (ice is not null)
        {
            list.Add(cases.Iced("ice, still air", storm.TemperatureK, ice));
        }

        if (storm.GustMPerS > 0)
        {
            var directions = storm.FromAzimuthRad is { } from ? [new WindDirection(from)] : WindDirection.Around(Directions);
            list.AddRange(directions.Select(d => cases.Windy(ice is null ? "gust" : "gust with ice", storm.TemperatureK, d, ice)));
        }

        return list;
    }

    /// <summary>The published method behind a word of the design file.</summary>
    public static IWindMethod MethodOf(WindMethod word) => WindMethods.Find(word switch
    {
        WindMethod.Asce7_16 => "ASCE 7-16",
        WindMethod.Asce7_22 => "ASCE 7-22",
        WindMethod.En1991 => "EN 1991-1-4",
        _ => "stated pressure",
    }) ?? throw new InvalidOperationException($"No wind method is registered for {word}.");

    /// <summary>The wind of a site in the terms of its method.</summary>
    public static WindSite WindOf(Model.Design.Site site) => new(
        site.Wind.SpeedMPerS ?? 0,
        (site.Wind.Method, site.Wind.Exposure) switch
        {
            (WindMethod.En1991, Exposure.Water) => "0",
            (WindMethod.En1991, Exposure.Open) => "II",
            (WindMethod.En1991, _) => "III",
            (_, Exposure.Water) => "D",
            (_, Exposure.Open) => "C",
            _ => "B",
        })
    {
        GroundElevationM = Math.Max(0, site.ElevationM),
        StatedPressurePa = site.Wind.PressurePa,
        TopographicFactor = site.Wind.Topography,
        GustFactor = site.Wind.GustFactor,
    };

    private StandCase Still(string name, double temperatureK) => new(new SolverCase(name, temperatureK) { PointLoads = [.. Overhang(null)] }, null);

    // What stands out to one side bends the mast by its weight, and by its ice.
    private IEnumerable<SolverPointLoad> Overhang(IceCase? ice)
    {
        foreach (var thing in model.Mast.Attachments)
        {
            var height = HeightOf(thing);
            var iced = ice is null ? Vec3.Zero : factor * MastLoads.Ice(ice, BodyOf(thing), Ground(height)).N;
            var moment = ReachOf(thing).Cross(iced + new Vec3(0, 0, -thing.MassKg * GravityMPerS2));
            if (iced.Length > 0 || moment.Length > 0)
            {
                yield return new SolverPointLoad(height, iced, moment);
            }
        }

        if (ice is not null)
        {
            foreach (var part in TopParts.Of(model.Mast))
            {
                yield return new SolverPointLoad(model.Mast.LengthM, factor * MastLoads.Ice(ice, part.Ice, Ground(model.Mast.LengthM)).N);
            }
        }

        if (ice is not null && model.Mast.TopWires is { PartOfGuys: false } wires)
        {
            yield return new SolverPointLoad(model.Mast.LengthM, factor * MastLoads.Ice(ice, TopWiresOf(wires), Ground(model.Mast.LengthM)).N);
        }
    }

    internal IceCase IceOf()
    {
        var ice = station.Site.Ice;
        var site = new IceSite
        {
            NominalThicknessM = ice.ThicknessM,
            DensityKgPerM3 = ice.DensityKgPerM3,
            ConcurrentWindMps = ice.WindSpeedMPerS,
            TopographicFactor = station.Site.Wind.Method == WindMethod.En1991 ? 1 : station.Site.Wind.Topography,
        };
        if (ice.GlazeClass is { } glaze)
        {
            return new IceCase(new IsoGlaze(), site with { GlazeClass = glaze });
        }

        switch (station.Site.Wind.Method)
        {
            case WindMethod.Asce7_16:
                return new IceCase(AsceIce.Edition2016, site);
            case WindMethod.Asce7_22:
                return new IceCase(AsceIce.Edition2022, site);
            default:
                // These methods take a share of the full wind: the one the stated ice wind speed comes to.
                var full = station.Site.Wind.SpeedMPerS ?? Math.Sqrt((station.Site.Wind.PressurePa ?? 0) / 0.613);
                return new IceCase(new StatedIce(), site with { PressureShare = full > 0 ? Math.Min(1, Math.Pow(ice.WindSpeedMPerS / full, 2)) : 0 });
        }
    }

    private StandCase Iced(string name, double temperatureK, IceCase ice) => new(
        new SolverCase(name, temperatureK)
        {
            MastLoads = [.. model.Runs.Select(r => IceOn(r, ice))],
            GuyLoads = [.. model.Guys.Select(g => new Structure.Mast.GuyLoad(g.Guy.Name, factor * CableLoads.Ice(ice, g.Guy.AnchorM, High(g), g.Strand.DiameterM).NPerM))],
            PointLoads = [.. Overhang(ice)],
        },
        null);

    private StandCase Windy(string name, double temperatureK, WindDirection direction, IceCase? ice)
    {
        var windy = new WindCase(method, wind, direction, ice);
        var middle = model.Runs[model.Runs.Count / 2];
        var degrees = (direction.FromAzimuthRad * 180 / Math.PI).ToString("F0", CultureInfo.InvariantCulture);
        var mast = model.Runs.Select(r => Along(r, h => MastLoads.Wind(windy, r.Shape, Ground(h), AlongAt(h)).NPerM));
        var solver = new SolverCase($"{name}, from {degrees}°", temperatureK)
        {
            MastLoads = ice is null ? [.. mast] : [.. mast, .. model.Runs.Select(r => IceOn(r, ice))],
            GuyLoads =
            [
                .. model.Guys.Select(g => new Structure.Mast.GuyLoad(g.Guy.Name, factor * (
                    CableLoads.Wind(windy, g.Guy.AnchorM, High(g), g.Strand.DiameterM).NPerM
                    + (ice is null ? Vec3.Zero : CableLoads.Ice(ice, g.Guy.AnchorM, High(g), g.Strand.DiameterM).NPerM)))),
            ],
            PointLoads = [.. Bodies().Select(b => OnBody(windy, b.HeightM, b.Body, b.ReachM)), .. Overhang(ice)],
        };
        return new StandCase(solver, MastLoads.Wind(windy, middle.Shape, Ground((middle.BottomM + middle.TopM) / 2), AlongAt((middle.BottomM + middle.TopM) / 2)).Magnitude)
        {
            Kind = name,
            WindFromRad = direction.FromAzimuthRad,
        };
    }

    private SolverPointLoad OnBody(WindCase windy, double heightM, PointBody body, Vec3 reachM)
    {
        var force = factor * MastLoads.Wind(windy, body, Ground(heightM + reachM.Z)).N;
        return new SolverPointLoad(heightM, force, reachM.Cross(force));
    }

    private SolverLineLoad IceOn(MastRun run, IceCase ice) => Along(run, h => MastLoads.Ice(ice, run.Shape, Ground(h), AlongAt(h)).NPerM);

    private ImmutableArray<Alongside> AlongAt(double aboveFootM) => model.AlongAt(aboveFootM);

    private IEnumerable<(double HeightM, PointBody Body, Vec3 ReachM)> Bodies()
    {
        foreach (var thing in model.Mast.Attachments.Where(a => a.DragAreaM2 > 0))
        {
            yield return (HeightOf(thing), BodyOf(thing), ReachOf(thing));
        }

        foreach (var part in TopParts.Of(model.Mast))
        {
            yield return (model.Mast.LengthM, part.Wind, part.RiseM * Vec3.Up);
        }

        if (model.Mast.TopWires is { PartOfGuys: false } wires)
        {
            yield return (model.Mast.LengthM, TopWiresOf(wires), Vec3.Zero);
        }
    }

    // The far ends are held elsewhere: half of each wire's wind and ice comes to the mast.
    private static PointBody TopWiresOf(TopWires wires) => new("top wires", wires.Count * wires.LengthM * wires.WireDiameterM / 2, TopPart.RodDrag, wires.WireDiameterM);

    private static PointBody BodyOf(Attachment thing) => thing.RodDiameterM > 0
        ? new PointBody(thing.Name, thing.DragAreaM2 / TopPart.RodDrag, TopPart.RodDrag, thing.RodDiameterM)
        : new PointBody(thing.Name, thing.DragAreaM2, 1);

    private double HeightOf(Attachment thing) => Math.Clamp(thing.HeightM - model.Mast.Base.HeightM, 0, model.Mast.LengthM);

    private static Vec3 ReachOf(Attachment thing) => thing.ReachM * new Vec3(Math.Sin(thing.BearingRad), Math.Cos(thing.BearingRad), 0);

    private SolverLineLoad Along(MastRun run, Func<double, Vec3> loadAt)
    {
        var steps = Math.Max(1, (int)Math.Ceiling((run.TopM - run.BottomM) / StepM));
        return new SolverLineLoad([.. Enumerable.Range(0, steps + 1)
            .Select(i => run.BottomM + ((run.TopM - run.BottomM) * i / steps))
            .Select(h => new Structure.Mast.LineLoadPoint(h, factor * loadAt(h)))]);
    }

    private double Ground(double aboveFootM) => aboveFootM + model.Mast.Base.HeightM;

    private Vec3 High(ModelGuy guy) => StandModel.FootOf(model.Mast) + (guy.Guy.AttachmentHeightM * Vec3.Up);
}
