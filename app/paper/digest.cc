#include "paper/digest.h"

#include <glib.h>

namespace steamworthy::paper {

std::string sha256(std::string_view bytes) {
  gchar* digits = g_compute_checksum_for_data(
      G_CHECKSUM_SHA256, reinterpret_cast<const guchar*>(bytes.data()), bytes.size());
  std::string text = digits;
  g_free(digits);
  return text;
}

}  // namespace steamworthy::paper
