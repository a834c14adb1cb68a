using System.Runtime.CompilerServices;

namespace Mastwright.Numerics.Dense;

/// <summary>Pinned memory that starts on a 64-byte boundary.</summary>
internal sealed unsafe class AlignedBuffer<T>
    where T : unmanaged
{
    private const int Alignment = 64;
    private readonly T[] _array;
    private readonly int _offset;

    /// <param name="length">Elements.</param>
    /// <param name="zeroed">Whether it must start as zero; clearing large memory costs as much as copying into it.</param>
    public AlignedBuffer(long length, bool zeroed = false)
    {
        // Pinned for life: addressed by pointer from several threads.
        var total = checked((int)(length + (Alignment / sizeof(T))));
        _array = zeroed ? GC.AllocateArray<T>(total, pinned: true) : GC.AllocateUninitializedArray<T>(total, pinned: true);
        var start = (nuint)Unsafe.AsPointer(ref _array[0]);
        Start = (T*)((start + Alignment - 1) / Alignment * Alignment);
        _offset = (int)(Start - (T*)start);
    }

    /// <summary>The first element. A pointer does not keep the memory: whoever uses it keeps this object alive until done.</summary>
    public T* Start { get; }

    /// <summary>A part of the memory that keeps it alive.</summary>
    public Span<T> Slice(long from, int length) => _array.AsSpan((int)(_offset + from), length);
}
