// The face of core for the browser: one function, text in and text out (core/wire/tablet.h).
//
// Built by tools/wasm.sh. Called by web/src/core.ts.
#include "wire/tablet.h"

extern "C" {

/// The answer stays until the next call. Texts are UTF-8 and end in a zero.
const char* steamworthy_answer(const char* question, const char* request) {
  static std::string kept;
  kept = steamworthy::wire::answer(question, request);
  return kept.c_str();
}
}
