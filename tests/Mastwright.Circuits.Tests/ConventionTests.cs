using System.Reflection;
using System.Runtime.CompilerServices;
using Mastwright.Circuits.Ac;

namespace Mastwright.Circuits.Tests;

/// <summary>Holds every public type to the house rules.</summary>
public class ConventionTests
{
    private static readonly Type[] Public = typeof(Network).Assembly.GetExportedTypes();

    [Fact]
    public void No_public_type_can_be_changed_after_it_is_made()
    {
        var setters = from type in Public
                      from property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly)
                      where property.SetMethod is { IsPublic: true } set
                          && !set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit))
                      select $"{type.Name}.{property.Name}";
        Assert.Empty(setters);
        var fields = from type in Public
                     where !type.IsEnum
                     from field in type.GetFields(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly)
                     where field is { IsInitOnly: false, IsLiteral: false }
                     select $"{type.Name}.{field.Name}";
        Assert.Empty(fields);
    }

    [Fact]
    public void No_type_holds_changing_state_in_statics()
    {
        var fields = from type in typeof(Network).Assembly.GetTypes()
                     where !type.IsEnum && type.GetCustomAttribute<CompilerGeneratedAttribute>() is null && !type.Name.Contains('<')
                     from field in type.GetFields(BindingFlags.NonPublic | BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly)
                     where field is { IsInitOnly: false, IsLiteral: false } && !field.Name.Contains('<')
                     select $"{type.Name}.{field.Name}";
        Assert.Empty(fields);
    }

    [Fact]
    public void Voltage_and_current_types_never_turn_into_each_other_or_into_numbers_silently()
    {
        foreach (var type in new[] { typeof(Quantities.RmsVolts), typeof(Quantities.PeakVolts), typeof(Quantities.RmsAmps), typeof(Quantities.PeakAmps) })
            Assert.DoesNotContain(type.GetMethods(BindingFlags.Public | BindingFlags.Static), m => m.Name is "op_Implicit" or "op_Explicit");
    }
}
