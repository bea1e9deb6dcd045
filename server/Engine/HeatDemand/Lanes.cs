using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>
/// A few independent options or offsets side by side in one vector. Every operation is the scalar's own, lane by lane, with no fused multiply-add,
/// so that all widths give the same bits.
/// </summary>
/// <typeparam name="T">The vector.</typeparam>
internal interface ILanes<T>
    where T : struct, ILanes<T>
{
    /// <summary>Lanes in the vector.</summary>
    static abstract int Width { get; }

    /// <summary>The same value in every lane.</summary>
    static abstract T All(double value);

    /// <summary>Reads lanes.</summary>
    static abstract T Load(ref readonly double from);

    /// <summary>Writes lanes.</summary>
    static abstract void Store(T value, ref double to);

    /// <summary>The smaller, lane by lane; no lane is NaN or minus zero.</summary>
    static abstract T Min(T a, T b);

    /// <summary>The larger, lane by lane; no lane is NaN or minus zero.</summary>
    static abstract T Max(T a, T b);

    /// <summary>Where a is less than b the one, else the other.</summary>
    static abstract T WhereLess(T a, T b, T then, T otherwise);

    /// <summary>Sum.</summary>
    static abstract T operator +(T a, T b);

    /// <summary>Difference.</summary>
    static abstract T operator -(T a, T b);

    /// <summary>Product.</summary>
    static abstract T operator *(T a, T b);
}

/// <summary>Eight lanes.</summary>
internal readonly struct EightLanes(Vector512<double> v) : ILanes<EightLanes>
{
    private readonly Vector512<double> v = v;

    public static int Width => 8;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static EightLanes All(double value) => new(Vector512.Create(value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static EightLanes Load(ref readonly double from) => new(Vector512.LoadUnsafe(in from));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Store(EightLanes value, ref double to) => value.v.StoreUnsafe(ref to);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static EightLanes Min(EightLanes a, EightLanes b) => new(Vector512.MinNative(a.v, b.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static EightLanes Max(EightLanes a, EightLanes b) => new(Vector512.MaxNative(a.v, b.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static EightLanes WhereLess(EightLanes a, EightLanes b, EightLanes then, EightLanes otherwise) =>
        new(Vector512.ConditionalSelect(Vector512.LessThan(a.v, b.v), then.v, otherwise.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static EightLanes operator +(EightLanes a, EightLanes b) => new(a.v + b.v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static EightLanes operator -(EightLanes a, EightLanes b) => new(a.v - b.v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static EightLanes operator *(EightLanes a, EightLanes b) => new(a.v * b.v);
}

/// <summary>Four lanes.</summary>
internal readonly struct FourLanes(Vector256<double> v) : ILanes<FourLanes>
{
    private readonly Vector256<double> v = v;

    public static int Width => 4;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes All(double value) => new(Vector256.Create(value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Load(ref readonly double from) => new(Vector256.LoadUnsafe(in from));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Store(FourLanes value, ref double to) => value.v.StoreUnsafe(ref to);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Min(FourLanes a, FourLanes b) => new(Vector256.MinNative(a.v, b.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Max(FourLanes a, FourLanes b) => new(Vector256.MaxNative(a.v, b.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes WhereLess(FourLanes a, FourLanes b, FourLanes then, FourLanes otherwise) =>
        new(Vector256.ConditionalSelect(Vector256.LessThan(a.v, b.v), then.v, otherwise.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes operator +(FourLanes a, FourLanes b) => new(a.v + b.v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes operator -(FourLanes a, FourLanes b) => new(a.v - b.v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes operator *(FourLanes a, FourLanes b) => new(a.v * b.v);
}

/// <summary>Two lanes.</summary>
internal readonly struct TwoLanes(Vector128<double> v) : ILanes<TwoLanes>
{
    private readonly Vector128<double> v = v;

    public static int Width => 2;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes All(double value) => new(Vector128.Create(value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes Load(ref readonly double from) => new(Vector128.LoadUnsafe(in from));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Store(TwoLanes value, ref double to) => value.v.StoreUnsafe(ref to);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes Min(TwoLanes a, TwoLanes b) => new(Vector128.MinNative(a.v, b.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes Max(TwoLanes a, TwoLanes b) => new(Vector128.MaxNative(a.v, b.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes WhereLess(TwoLanes a, TwoLanes b, TwoLanes then, TwoLanes otherwise) =>
        new(Vector128.ConditionalSelect(Vector128.LessThan(a.v, b.v), then.v, otherwise.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes operator +(TwoLanes a, TwoLanes b) => new(a.v + b.v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes operator -(TwoLanes a, TwoLanes b) => new(a.v - b.v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TwoLanes operator *(TwoLanes a, TwoLanes b) => new(a.v * b.v);
}
