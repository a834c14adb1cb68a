using System.Runtime.CompilerServices;

namespace Mastwright.Numerics.Dense;

/// <summary>Pinned, zeroed scratch memory that starts on a 64-byte boundary.</summary>
internal sealed unsafe class AlignedBuffer<T>
    where T : unmanaged
{
    private const int Alignment = 64;
    private readonly T[] _array;

    public AlignedBuffer(long length)
    {
        // Pinned for life: addressed by pointer from several threads.
        _array = GC.AllocateArray<T>(checked((int)(length + (Alignment / sizeof(T)))), pinned: true);
        var start = (nuint)Unsafe.AsPointer(ref _array[0]);
        Start = (T*)((start + Alignment - 1) / Alignment * Alignment);
    }

    public T* Start { get; }
}
