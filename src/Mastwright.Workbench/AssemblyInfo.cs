using System.Runtime.CompilerServices;

[assembly: InternalsVisibleTo("Mastwright.Workbench.Tests")]
