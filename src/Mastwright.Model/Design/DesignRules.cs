using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Model.Text;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;

namespace Mastwright.Model.Design;

/// <summary>Rules between the fields of a design: what each field allows on its own is said by its shape.</summary>
internal static class DesignRules
{
    /// <param name="station">The station, with defaults where a field could not be read.</param>
    /// <param name="places">Where each field stands.</param>
    /// <param name="broken">Paths of fields already reported: rules that rest on them are silent, so that one slip gives one message.</param>
    /// <param name="file">The file's name.</param>
    public static ImmutableArray<Finding> Check(Station station, IReadOnlyDictionary<string, Place> places, IReadOnlyCollection<string> broken, string file)
    {
        var rules = new Rules(station, places, broken, file);
        rules.Site();
        rules.Bands();
        rules.Masts();
        rules.Groups();
        rules.Networks();
        return [.. rules.Findings];
    }

    private sealed class Rules(Station station, IReadOnlyDictionary<string, Place> places, IReadOnlyCollection<string> broken, string file)
    {
        private bool Sound(params string[] paths) => !paths.Any(p => broken.Any(b => b.StartsWith(p, StringComparison.Ordinal)));

        public List<Finding> Findings { get; } = [];

        public void Site()
        {
            var site = station.Site;
            if (Sound("site.wind") && (site.Wind.Method == WindMethod.StatedPressure ? site.Wind.PressurePa is null : site.Wind.SpeedMPerS is null))
            {
                var key = site.Wind.Method == WindMethod.StatedPressure ? "pressure" : "speed";
                Add("missing-wind", "site.wind", $"The wind method needs a {key}.", null, null, $"Add “{key}: …” to the block “wind”.");
            }

            if (Sound("site.wind") && site.Wind.Method != WindMethod.StatedPressure && site.Wind.SpeedMPerS is { } speed && (speed < 10 || speed > 110))
            {
                Add("wind-speed", "site.wind.speed", "The basic wind speed is not one that any map shows.", QuantityFormat.Show(speed, QuantityKind.Speed, station.UnitSystem),
                    "10 to 110 m/s (22 to 246 mph)", "Look the speed up in the map of the chosen standard and mind its unit.");
            }

            Temperatures(site);
        }

        public void Bands()
        {
            for (var b = 0; b < station.Bands.Length; b++)
            {
                var band = station.Bands[b];
                if (Sound($"bands[{b}]") && ((band.LowHz ?? band.FrequencyHz) > band.FrequencyHz || (band.HighHz ?? band.FrequencyHz) < band.FrequencyHz))
                {
                    Add("band-edges", $"bands[{b}].frequency", "The frequency lies outside the band's own edges.", QuantityFormat.Show(band.FrequencyHz, QuantityKind.Frequency, station.UnitSystem),
                        "low at most, high at least the frequency", "Correct “low”, “high” or “frequency”.");
                }
            }

            Twice(station.Bands.Select(b => b.Title), i => $"bands[{i}].frequency", "bands");
        }

        private void Temperatures(Site site)
        {
            if (site.ColdestK > site.HottestK)
            {
                Add("temperature-order", "site.coldest", "The coldest temperature is above the hottest.", T(site.ColdestK), "at most " + T(site.HottestK), "Swap them.");
            }
            else if (site.TensioningTemperatureK < site.ColdestK || site.TensioningTemperatureK > site.HottestK)
            {
                Add("temperature-order", "site.tensioning-temperature", "The tensioning temperature lies outside coldest and hottest.",
                    T(site.TensioningTemperatureK), $"{T(site.ColdestK)} to {T(site.HottestK)}", "Widen the range or correct the temperature.");
            }
        }

        public void Masts()
        {
            Twice(station.Masts.Select(m => m.Name), i => $"masts[{i}].name", "masts");
            for (var i = 0; i < station.Masts.Length; i++)
            {
                Mast(station.Masts[i], $"masts[{i}]");
                for (var j = 0; j < i; j++)
                {
                    var apart = double.Hypot(station.Masts[i].EastM - station.Masts[j].EastM, station.Masts[i].NorthM - station.Masts[j].NorthM);
                    if (apart < 1)
                    {
                        Add("masts-in-one-place", $"masts[{i}].east", $"Masts “{station.Masts[j].Name}” and “{station.Masts[i].Name}” stand in one place.",
                            L(apart) + " apart", "at least 1 m apart", "Give each mast its own “east” and “north”.", $"masts[{i}]");
                    }
                }
            }
        }

        public void Groups()
        {
            for (var g = 0; g < station.Groups.Length; g++)
            {
                Feeders(station.Groups[g], $"groups[{g}].feed.feeder-lengths");
                for (var d = 0; d < station.Groups[g].Directions.Length; d++)
                {
                    Currents(station.Groups[g].Directions[d], $"groups[{g}].directions[{d}]");
                }
            }
        }

        private void Feeders(Group group, string path)
        {
            var fed = group.Directions.SelectMany(d => d.Currents).Where(c => c.Size > 0).Select(c => c.Mast).Distinct().Count();
            if (group.Feed.FeederLengthsM.Length > 0 && group.Feed.FeederLengthsM.Length != fed)
            {
                Add("feeder-lengths", path, "There is not one length of line for each mast of the group that is fed.", group.Feed.FeederLengthsM.Length.ToString(CultureInfo.InvariantCulture),
                    fed.ToString(CultureInfo.InvariantCulture), "Give one length for each mast fed, in the order of the masts, or leave them out.");
            }
        }

        public void Networks()
        {
            var (masts, bands) = (station.Masts.Select(m => m.Name).ToList(), station.Bands.Select(b => b.Title).ToList());
            for (var n = 0; n < station.Feed.Networks.Length; n++)
            {
                var network = station.Feed.Networks[n];
                if (network.Band.Length > 0 && !bands.Contains(network.Band))
                {
                    Unknown($"feed.networks[{n}].band", "band", network.Band, bands);
                }

                if (network.Mast is { } mast && !masts.Contains(mast))
                {
                    Unknown($"feed.networks[{n}].mast", "mast", mast, masts);
                }
            }

            Twice(station.Feed.Networks.Select(n => n.Mast is null ? n.Band : $"{n.Band}, {n.Mast}"), i => $"feed.networks[{i}].band", "networks");
            var tolerance = station.Feed.Tolerance;
            if (tolerance.WetDays + tolerance.DryDays > 1)
            {
                Add("days-over-all", "feed.tolerance.wet-days", "Wet and dry days together are more than all days.",
                    QuantityFormat.Show(tolerance.WetDays + tolerance.DryDays, QuantityKind.Ratio, station.UnitSystem), "at most 100 %", "Lower one of the shares.", "feed.tolerance");
            }
        }

        private void Currents(Direction direction, string path)
        {
            var names = station.Masts.Select(m => m.Name).ToList();
            for (var c = 0; c < direction.Currents.Length; c++)
            {
                var mast = direction.Currents[c].Mast;
                if (mast.Length > 0 && !names.Contains(mast))
                {
                    Unknown($"{path}.currents[{c}].mast", "mast", mast, names);
                }
            }

            Twice(direction.Currents.Select(c => c.Mast), i => $"{path}.currents[{i}].mast", "currents");
            if (direction.Currents.Length > 0 && direction.Currents.All(c => c.Size == 0))
            {
                Add("no-current", path + ".currents", "Every mast of this direction has no current.", "0", "at least one above 0", "Give the fed masts a size of 1.");
            }
        }

        private void Mast(Mast mast, string path)
        {
            Sections(mast, path);
            Twice(mast.Anchors.Select(a => a.Name), i => $"{path}.anchors[{i}].name", "anchors");
            var anchorNames = mast.Anchors.Select(a => a.Name).ToList();
            for (var g = 0; g < mast.Guys.Length; g++)
            {
                Guy(mast, mast.Guys[g], path, $"{path}.guys[{g}]", anchorNames);
            }

            for (var a = 0; a < mast.Anchors.Length; a++)
            {
                var anchor = mast.Anchors[a];
                var kinds = new object?[] { anchor.Block, anchor.Deadman, anchor.Screw, anchor.RockBar, anchor.Post }.Count(k => k is not null);
                if (kinds > 1)
                {
                    Add("anchor-kinds", $"{path}.anchors[{a}]", $"Anchor “{anchor.Name}” is described as {kinds} kinds at once.", null, "one of block, deadman, screw, rock-bar, post", "Keep one.");
                }
            }

            for (var g = 1; g < mast.Guys.Length; g++)
            {
                if (Sound(path + ".guys") && Math.Abs(mast.Guys[g].HeightM - mast.Guys[g - 1].HeightM) < 0.3)
                {
                    Add("guy-levels-together", $"{path}.guys[{g}].height", "Two guy levels are at the same height.", L(mast.Guys[g].HeightM),
                        "at least 0.3 m (1 ft) apart", "Merge them into one level with more anchors.");
                }
            }

            Feet(mast, path);
            Radials(mast, path);
            for (var a = 0; a < mast.Attachments.Length; a++)
            {
                if (mast.Attachments[a].HeightM > mast.TopM + 1e-9 && mast.Sections.Length > 0 && Sound(path + ".sections", path + ".base"))
                {
                    Add("attachment-above-mast", $"{path}.attachments[{a}].height", $"“{mast.Attachments[a].Name}” sits above the mast.",
                        L(mast.Attachments[a].HeightM), $"at most {L(mast.TopM)}, the mast's top", "Lower it or lengthen the mast.");
                }
            }

            Crossings(mast, path);
            if (mast.TopWires is { } wires && mast.Sections.Length > 0 && wires.LengthM * Math.Sin(wires.SlopeRad) > mast.TopM - 0.5)
            {
                Add("top-wires-reach-ground", path + ".top-wires.length", "The top wires reach the ground.",
                    L(wires.LengthM), $"ends at least 0.5 m above ground", "Shorten them or make them less steep.");
            }
        }

        private void Radials(Mast mast, string path)
        {
            var radials = mast.Radials;
            if (!Sound(path + ".radials", path + ".base"))
            {
                return;
            }

            if (radials.Lay == RadialLay.Elevated && radials.HeightM is null)
            {
                Add("radials-without-height", path + ".radials.lay", "Elevated radials need a height.", null, null, "Add “height: …” to the block “radials”.");
            }
            else if (radials.Lay == RadialLay.Buried && !(radials.DepthM > 0))
            {
                Add("radials-without-depth", path + ".radials.lay", "Buried radials need a depth.", null, null, "Add “depth: …” to the block “radials”.");
            }
            else if (radials.Lay != RadialLay.Elevated && radials.HeightM is { } stray)
            {
                Add("radials-two-ways", path + ".radials.height", "The radials have a height but do not lie elevated.", L(stray), "a height only with “lay: elevated”", "Leave out “height”, or write “lay: elevated”.");
            }
            else if (radials.HeightM is { } height && radials.DepthM > 0)
            {
                Add("radials-two-ways", path + ".radials.depth", "The radials have a height and a depth.", L(height) + ", " + F(radials.DepthM), "one of the two", "Leave out one.");
            }
            else if (radials.HeightM is { } high && high > mast.Base.HeightM - 0.1 + 1e-9)
            {
                Add("radials-above-base", path + ".radials.height", "The elevated radials hang as high as the mast's lower end.", L(high), $"at most {L(mast.Base.HeightM - 0.1)}, 0.1 m under the mast's lower end",
                    "Raise the base (“base: { height: … }”) or lower the radials.");
            }

            if (radials.Lay == RadialLay.Elevated && radials.Screen is not null)
            {
                Add("screen-under-elevated", path + ".radials.screen", "A screen is joined to radials on or in the soil; these are elevated.", null, null, "Leave out “screen”.");
            }
        }

        private void Crossings(Mast mast, string path)
        {
            Twice(mast.Crossings.Select(c => c.Name), i => $"{path}.crossings[{i}].name", "crossings");
            for (var c = 0; c < mast.Crossings.Length; c++)
            {
                var crossing = mast.Crossings[c];
                var kinds = new object?[] { crossing.Coil, crossing.Transformer, crossing.Stub }.Count(k => k is not null);
                if (Sound($"{path}.crossings[{c}]") && kinds != 1)
                {
                    Add("crossing-kind", $"{path}.crossings[{c}]", $"Crossing “{crossing.Name}” is described as {(kinds == 0 ? "no kind" : kinds + " kinds at once")}.",
                        null, "exactly one of coil, transformer, stub", "Keep one.");
                }
            }
        }

        private void Sections(Mast mast, string path)
        {
            for (var s = 0; s < mast.Sections.Length; s++)
            {
                var section = mast.Sections[s];
                if (Sound($"{path}.sections[{s}]") && (section.Lattice is null) == (section.Tube is null))
                {
                    Add("section-kind", $"{path}.sections[{s}]", section.Tube is null ? "The section says neither lattice nor tube." : "The section says both lattice and tube.",
                        null, "exactly one of lattice, tube", "Keep one of the two.");
                }

                if (section.Tube is { } tube && tube.WallM * 2 > Math.Min(tube.DiameterM, tube.TopDiameterM ?? tube.DiameterM))
                {
                    Add("wall-too-thick", $"{path}.sections[{s}].tube.wall", "The wall is thicker than half the diameter.",
                        F(tube.WallM), "at most " + F(Math.Min(tube.DiameterM, tube.TopDiameterM ?? tube.DiameterM) / 2), "Check both numbers and their units.");
                }

                if (section.Joint is { } joint && Sound($"{path}.sections[{s}]") && section.Tube is null == (joint.Kind != MastJointKind.LegBolts))
                {
                    Add("joint-kind", $"{path}.sections[{s}].joint.kind", section.Tube is null ? "A lattice is not joined as tubes are." : "A tube has no legs to bolt.",
                        FieldWord(joint.Kind), section.Tube is null ? "leg-bolts" : "telescoped or swaged", "Choose the kind that fits the section.");
                }
            }
        }

        private void Guy(Mast mast, GuyLevel guy, string mastPath, string path, List<string> anchorNames)
        {
            var topKnown = mast.Sections.Length > 0 && Sound(mastPath + ".sections", mastPath + ".base", path + ".height");
            if (topKnown && (guy.HeightM > mast.TopM + 1e-9 || guy.HeightM <= mast.Base.HeightM))
            {
                Add("guy-above-mast", path + ".height", guy.HeightM > mast.TopM ? "The guy is attached above the mast's top." : "The guy is attached below the mast's foot.",
                    L(guy.HeightM), $"above {L(mast.Base.HeightM)} and at most {L(mast.TopM)}, the mast's top", "Lower the attachment, or lengthen the sections.");
            }

            for (var a = 0; a < guy.Anchors.Length; a++)
            {
                if (!anchorNames.Contains(guy.Anchors[a]))
                {
                    Unknown($"{path}.anchors[{a}]", "anchor", guy.Anchors[a], anchorNames, path + ".anchors");
                }
            }

            Twice(guy.Anchors, i => $"{path}.anchors[{i}]", "anchors", path + ".anchors");
            foreach (var anchor in UsedAnchors(mast, guy))
            {
                if (Sound(path + ".height") && anchor.RiseM >= guy.HeightM - 0.3)
                {
                    Add("anchor-above-attachment", path + ".height", $"Anchor “{anchor.Name}” lies as high as the guy's attachment; the guy would lift the mast.",
                        L(anchor.RiseM), "below " + L(guy.HeightM - 0.3), "Attach the guy higher or choose a lower anchor.");
                }
            }
        }

        private void Feet(Mast mast, string path)
        {
            foreach (var (guy, g) in mast.Guys.Select((guy, g) => (guy, g)))
            {
                var used = UsedAnchors(mast, guy);
                if (used.Count == 0 || !guy.Anchors.All(n => used.Any(a => a.Name == n)) || !Sound(path + ".anchors"))
                {
                    continue;
                }

                // A level holds the mast only when no half circle is free of anchors.
                var bearings = used.Select(a => a.BearingRad).Order().ToList();
                var widest = bearings.Zip(bearings.Skip(1).Append(bearings[0] + (2 * Math.PI)), (a, b) => b - a).Max();
                if (widest > (Math.PI * 0.98))
                {
                    Add("guys-one-sided", $"{path}.guys[{g}].anchors", "The guys of this level leave one side of the mast unheld.",
                        used.Count + " anchors, widest gap " + (widest * 180 / Math.PI).ToString("F0", CultureInfo.InvariantCulture) + "°",
                        "no gap of 176° or more between neighbouring anchors", "Use at least three anchors spread evenly.", $"{path}.guys[{g}].height");
                }
            }
        }

        private static string FieldWord(MastJointKind kind) => kind switch { MastJointKind.LegBolts => "leg-bolts", MastJointKind.Swaged => "swaged", _ => "telescoped" };

        private static List<Anchor> UsedAnchors(Mast mast, GuyLevel guy) =>
            guy.Anchors.IsEmpty ? [.. mast.Anchors] : [.. mast.Anchors.Where(a => guy.Anchors.Contains(a.Name))];

        private void Twice(IEnumerable<string> names, Func<int, string> pathOf, string what, string? fallback = null)
        {
            var seen = new HashSet<string>();
            foreach (var (name, i) in names.Select((n, i) => (n, i)))
            {
                if (name.Length > 0 && !seen.Add(name))
                {
                    Add("name-twice", pathOf(i), $"The name “{name}” stands twice among the {what}.", name, "each name once", "Rename one of them.", fallback);
                }
            }
        }

        private void Unknown(string path, string what, string name, List<string> names, string? fallback = null)
        {
            var near = NearMiss.Of(name, names);
            Add("missing-" + what, path, $"There is no {what} called “{name}”." + (near is null ? "" : $" Did you mean “{near}”?"), name,
                names.Count == 0 ? null : "one of: " + string.Join(", ", names), $"Add the {what} or correct the name.", fallback);
        }

        private void Add(string code, string path, string message, string? value, string? allowed, string wayOut, string? fallback = null)
        {
            var place = places.GetValueOrDefault(path) ?? (fallback is null ? null : places.GetValueOrDefault(fallback)) ?? NearestPlace(path);
            Findings.Add(new Finding(code, Severity.Error, message, place with { Path = path }, value, allowed, wayOut));
        }

        // A field that was left out has no place of its own: point at the block it would stand in.
        private Place NearestPlace(string path)
        {
            for (var cut = path.LastIndexOfAny(['.', '[']); cut > 0; cut = path.LastIndexOfAny(['.', '['], cut - 1))
            {
                if (places.TryGetValue(path[..cut], out var place))
                {
                    return place;
                }
            }

            return new Place(file, 1, 1, path);
        }

        private string L(double m) => QuantityFormat.Show(m, QuantityKind.Length, station.UnitSystem);

        private string F(double m) => QuantityFormat.Show(m, QuantityKind.FineLength, station.UnitSystem);

        private string T(double k) => QuantityFormat.Show(k, QuantityKind.Temperature, station.UnitSystem);
    }
}
