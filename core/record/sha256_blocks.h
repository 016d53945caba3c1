// The compression of SHA-256 over whole blocks, twice: in plain C++ for every machine, and with the
// instructions that x86-64 processors have for it. Both give the same; sha256_test.cc holds them to
// it.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>

namespace steamworthy::record {

using Sha256State = std::array<std::uint32_t, 8>;

/// The 64 constants of FIPS 180-4, section 4.2.2.
extern const std::array<std::uint32_t, 64> sha256_constants;

/// Takes `count` blocks of 64 bytes into the state. FIPS 180-4, section 6.2.2.
void sha256_blocks_plain(Sha256State& state, const std::uint8_t* data, std::size_t count);

/// The same by the processor's own instructions; false, with nothing done, where it has none.
bool sha256_blocks_by_processor(Sha256State& state, const std::uint8_t* data, std::size_t count);

}  // namespace steamworthy::record
