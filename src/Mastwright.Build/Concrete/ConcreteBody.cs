namespace Mastwright.Build.Concrete;

/// <summary>How a body of concrete works.</summary>
public enum BodyShape
{
    /// <summary>A block or footing: bars both ways near its top and its underside, tied by uprights round its sides.</summary>
    Block,

    /// <summary>A beam pulled across its middle, its ends held by the soil: long bars near the front and the back, in stirrups.</summary>
    Beam,

    /// <summary>Concrete round a steel tube, which is its reinforcement.</summary>
    RoundATube,
}

/// <summary>A body of concrete to cast.</summary>
/// <param name="Name">What it is and where.</param>
/// <param name="Shape">How it works.</param>
/// <param name="LengthM">Its length; of a beam, across the pull; of a round one, its diameter.</param>
/// <param name="WidthM">Its width; of a beam, its thickness along the pull; of a round one, its diameter.</param>
/// <param name="HeightM">Its height or depth.</param>
/// <param name="Count">How many are alike.</param>
/// <param name="PullN">Largest level pull on a beam with the load factor of the code in it, newtons; null when not known.</param>
public sealed record ConcreteBody(string Name, BodyShape Shape, double LengthM, double WidthM, double HeightM, int Count = 1, double? PullN = null)
{
    /// <summary>Volume of one, m³; the tube inside a round one is not taken off.</summary>
    public double VolumeM3 => Shape == BodyShape.RoundATube ? Math.PI / 4 * LengthM * WidthM * HeightM : LengthM * WidthM * HeightM;
}

/// <summary>A deformed bar that can be bought.</summary>
/// <param name="Name">Its name.</param>
/// <param name="DiameterM">Nominal diameter, m.</param>
/// <param name="YieldPa">Yield strength, Pa.</param>
public sealed record RebarSize(string Name, double DiameterM, double YieldPa)
{
    private const double SteelKgPerM3 = 7850;

    /// <summary>Section, m².</summary>
    public double AreaM2 => Math.PI / 4 * DiameterM * DiameterM;

    /// <summary>Mass of a metre, kg.</summary>
    public double MassKgPerM => SteelKgPerM3 * AreaM2;
}

/// <summary>Bars of one mark in one body.</summary>
/// <param name="Mark">Letter on the list.</param>
/// <param name="Where">Where they go.</param>
/// <param name="Bend">How they are bent.</param>
/// <param name="Bar">Their size.</param>
/// <param name="Count">How many in one body.</param>
/// <param name="LengthM">Length to cut, bends included, m.</param>
/// <param name="SpacingM">Greatest distance from one to the next, m.</param>
public sealed record BarRun(string Mark, string Where, string Bend, RebarSize Bar, int Count, double LengthM, double SpacingM);
