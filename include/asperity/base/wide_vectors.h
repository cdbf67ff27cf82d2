// Marks a plain loop to be compiled for wider vectors too; the program takes what the processor has.
#pragma once

// Only for loops whose sums keep their order and where nothing may be fused (-ffp-contract=off): every width
// then gives the same bits. Off where the choice at start-up disturbs a sanitizer, and for other compilers.
#if defined(__x86_64__) && defined(__GNUC__) && !defined(__clang__) && !defined(__SANITIZE_ADDRESS__) &&     \
    !defined(__SANITIZE_THREAD__)
#define ASPERITY_WIDE __attribute__((target_clones("default", "avx2", "avx512f")))
#else
#define ASPERITY_WIDE
#endif

/// For what such a loop calls: compiled anew inside it, since a call would leave the wider vectors.
#if defined(__GNUC__)
#define ASPERITY_INTO_WIDE [[gnu::always_inline]] inline
#else
#define ASPERITY_INTO_WIDE inline
#endif
