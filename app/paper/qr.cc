#include "paper/qr.h"

#include <fmt/format.h>
#include <qrencode.h>

#include <algorithm>
#include <memory>

#include "base/error.h"

namespace steamworthy::paper {
namespace {

struct Free {
  void operator()(QRcode* code) const { QRcode_free(code); }
};

}  // namespace

void draw_code(Page& page, const Box& box, const std::string& text) {
  const std::unique_ptr<QRcode, Free> code(
      QRcode_encodeData(static_cast<int>(text.size()),
                        reinterpret_cast<const unsigned char*>(text.data()), 0, QR_ECLEVEL_M));
  if (!code) {
    throw OutOfRange("paper.code_too_long",
                     fmt::format("a QR code cannot hold {} bytes; at most 2331", text.size()));
  }
  constexpr int quiet = 4;
  const double module = std::min(box.width, box.height) / (code->width + 2 * quiet);
  const double x = box.centre().x - module * code->width / 2.0;
  const double y = box.centre().y - module * code->width / 2.0;
  // One path of runs: neighbouring dark modules of a row are one rectangle without a seam.
  Path dark;
  for (int row = 0; row < code->width; ++row) {
    for (int from = 0; from < code->width; ++from) {
      int to = from;
      while (to < code->width && (code->data[row * code->width + to] & 1) != 0) ++to;
      if (to == from) continue;
      const double left = x + from * module, right = x + to * module;
      const double top = y + row * module, bottom = top + module;
      dark.move({left, top}).line({right, top}).line({right, bottom}).line({left, bottom}).close();
      from = to;
    }
  }
  page.begin(Role::Figure, "QR code: " + text);
  page.fill(dark, 1.0);
  page.end(Role::Figure);
}

}  // namespace steamworthy::paper
