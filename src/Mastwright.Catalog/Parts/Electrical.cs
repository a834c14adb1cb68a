namespace Mastwright.Catalog;

/// <summary>Solid round wire.</summary>
/// <param name="Info">Name, source, standing and note.</param>
/// <param name="DiameterM">Diameter.</param>
/// <param name="Metal">Name of the metal on the shelf of metals.</param>
public sealed record Wire(RowInfo Info, double DiameterM, string Metal) : Part(Info);

/// <summary>Capacitor for a matching network.</summary>
/// <param name="Info">Name, source, standing and note.</param>
/// <param name="Kind"><c>"ceramic"</c>, <c>"vacuum variable"</c>, ...</param>
/// <param name="MinimumF">Least capacitance; equal to the greatest for a fixed one.</param>
/// <param name="MaximumF">Greatest capacitance.</param>
/// <param name="PeakVoltageV">Working voltage, crest.</param>
/// <param name="CurrentA">Working current, RMS, in the high-frequency bands.</param>
/// <param name="Quality">Quality factor.</param>
public sealed record Capacitor(RowInfo Info, string Kind, double MinimumF, double MaximumF, double PeakVoltageV, double CurrentA, double Quality) : Part(Info);

/// <summary>Feed line, coaxial or open.</summary>
/// <param name="Info">Name, source, standing and note.</param>
/// <param name="ImpedanceOhm">Characteristic impedance.</param>
/// <param name="VelocityFactor">Wave speed over that of light.</param>
/// <param name="LossRoot">Conductor loss k1 in dB per 100 m per √MHz.</param>
/// <param name="LossLinear">Dielectric loss k2 in dB per 100 m per MHz.</param>
/// <param name="PeakVoltageV">Working voltage, crest.</param>
/// <param name="DiameterM">Outside diameter, or spacing of an open line.</param>
public sealed record Line(RowInfo Info, double ImpedanceOhm, double VelocityFactor, double LossRoot, double LossLinear, double PeakVoltageV, double DiameterM) : Part(Info)
{
    /// <summary>Matched loss in dB per 100 m: k1 √f + k2 f, f in MHz.</summary>
    public double LossDbPer100M(double frequencyHz)
    {
        var mhz = frequencyHz / 1e6;
        return (LossRoot * Math.Sqrt(mhz)) + (LossLinear * mhz);
    }
}

/// <summary>Ferrite ring for a choke.</summary>
/// <param name="Info">Name, source, standing and note.</param>
/// <param name="OuterM">Outer diameter.</param>
/// <param name="InnerM">Inner diameter.</param>
/// <param name="HeightM">Height.</param>
/// <param name="Permeability">Initial relative permeability.</param>
/// <param name="RelaxationHz">Frequency at which its loss part peaks.</param>
public sealed record Core(RowInfo Info, double OuterM, double InnerM, double HeightM, double Permeability, double RelaxationHz) : Part(Info);
