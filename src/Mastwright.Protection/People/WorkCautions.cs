namespace Mastwright.Protection.People;

/// <summary>Cautions for work at the mast, shown wherever such work is planned or printed.</summary>
public static class WorkCautions
{
    /// <summary>Climbing.</summary>
    public const string Climbing =
        "Climb only a mast that is fully guyed and inspected, only with a full-body harness tied off at every moment, never alone, never with the transmitter able to come on, never with ice on it, in wind or with a storm near. " +
        "Many light masts must not be climbed at all: the maker says. Local codes and a licensed rigger come first.";

    /// <summary>Raising and lowering.</summary>
    public const string Lifting =
        "Raising and lowering load every part differently from standing. Nobody stands in the fall circle or in the bight of a rope; one person gives the signals; every hook, gin pole and winch has a marked working load. " +
        "Keep the whole reach of mast, guys and ropes clear of power lines. The maker's data and a licensed engineer come first.";

    /// <summary>Stored tension.</summary>
    public const string Tension =
        "A guy under tension that lets go cuts. Back every grip with a second one while you tension, stand out of line with it, and never undo a turnbuckle past its last safe thread.";
}
