using Mastwright.Bench;

return args switch
{
    ["lu", .. var rest] => LuBench.Run(rest),
    ["small"] => SmallBench.Run(),
    ["lu-parts", .. var rest] => LuParts.Run(rest),
    _ => Help(),
};

static int Help()
{
    Console.WriteLine("""
        Benchmarks, each a ratio against a named baseline in the same run.

          lu [--one-thread] [sizes...]  dense complex factorisation and solve; sizes 500 2000 4000 unless given
          lu-parts [size] [widths...]   where the time of one size goes, for each panel width
          small                         Bessel functions and banded factorisation
        """);
    return 2;
}
