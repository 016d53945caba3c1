#include "record/sha256_blocks.h"

#if defined(__x86_64__)

#include <cpuid.h>
#include <immintrin.h>

namespace steamworthy::record {
namespace {

/// Whether the processor has the SHA extensions, and SSE 4.1 beside them.
bool has_instructions() {
  unsigned a = 0, b = 0, c = 0, d = 0;
  if (__get_cpuid(1, &a, &b, &c, &d) == 0 || (c & (1u << 19)) == 0) return false;
  return __get_cpuid_count(7, 0, &a, &b, &c, &d) != 0 && (b & (1u << 29)) != 0;
}

__m128i load(const void* from) { return _mm_loadu_si128(static_cast<const __m128i*>(from)); }

__attribute__((target("sha,sse4.1"))) void blocks(Sha256State& state, const std::uint8_t* data,
                                                  std::size_t count) {
  // The instructions want the eight words as (a, b, e, f) and (c, d, g, h), the highest word first.
  const __m128i cdab = _mm_shuffle_epi32(load(&state[0]), 0xb1);
  const __m128i efgh = _mm_shuffle_epi32(load(&state[4]), 0x1b);
  __m128i abef = _mm_alignr_epi8(cdab, efgh, 8);
  __m128i cdgh = _mm_blend_epi16(efgh, cdab, 0xf0);
  const __m128i big_endian = _mm_set_epi64x(0x0c0d0e0f08090a0b, 0x0405060700010203);
  for (; count > 0; --count, data += 64) {
    const __m128i abef_before = abef;
    const __m128i cdgh_before = cdgh;
    __m128i W[4];  // the last sixteen words of the schedule, four in each
    for (std::size_t i = 0; i < 16; ++i) {
      __m128i& w = W[i % 4];
      if (i < 4) {
        w = _mm_shuffle_epi8(load(data + 16 * i), big_endian);
      } else {
        const __m128i w_7 = _mm_alignr_epi8(W[(i + 3) % 4], W[(i + 2) % 4], 4);
        w = _mm_add_epi32(_mm_sha256msg1_epu32(w, W[(i + 1) % 4]), w_7);
        w = _mm_sha256msg2_epu32(w, W[(i + 3) % 4]);
      }
      const __m128i sum = _mm_add_epi32(w, load(&sha256_constants[4 * i]));
      cdgh = _mm_sha256rnds2_epu32(cdgh, abef, sum);
      abef = _mm_sha256rnds2_epu32(abef, cdgh, _mm_shuffle_epi32(sum, 0x0e));
    }
    abef = _mm_add_epi32(abef, abef_before);
    cdgh = _mm_add_epi32(cdgh, cdgh_before);
  }
  const __m128i feba = _mm_shuffle_epi32(abef, 0x1b);
  const __m128i dchg = _mm_shuffle_epi32(cdgh, 0xb1);
  _mm_storeu_si128(reinterpret_cast<__m128i*>(&state[0]), _mm_blend_epi16(feba, dchg, 0xf0));
  _mm_storeu_si128(reinterpret_cast<__m128i*>(&state[4]), _mm_alignr_epi8(dchg, feba, 8));
}

}  // namespace

bool sha256_blocks_by_processor(Sha256State& state, const std::uint8_t* data, std::size_t count) {
  static const bool has = has_instructions();
  if (has) blocks(state, data, count);
  return has;
}

}  // namespace steamworthy::record

#else

namespace steamworthy::record {

bool sha256_blocks_by_processor(Sha256State&, const std::uint8_t*, std::size_t) { return false; }

}  // namespace steamworthy::record

#endif
