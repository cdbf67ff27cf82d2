// Lets the compiler build a loop for wide vectors too; the processor at hand decides when the program starts.
#pragma once

// Every clone does the same IEEE operations cell by cell (no contraction, no reassociation), so bits agree.
#if defined(__x86_64__) && defined(__GNUC__) && !defined(__clang__)
#define ASPERITY_VECTOR_CLONES __attribute__((target_clones("default", "avx2")))
#else
#define ASPERITY_VECTOR_CLONES
#endif
