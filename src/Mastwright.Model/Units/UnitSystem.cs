namespace Mastwright.Model.Units;

/// <summary>Which units results are shown in.</summary>
public enum UnitSystem
{
    /// <summary>Metres, millimetres, newtons, degrees Celsius.</summary>
    Metric,

    /// <summary>Feet, inches, pounds-force, degrees Fahrenheit.</summary>
    Us,
}
