// Labels for plates: tag and code, to be cut out.
#include <algorithm>

#include "boiler/tokens.h"
#include "paper/qr.h"
#include "paper/type.h"
#include "report/blocks.h"
#include "report/closure_marks.h"
#include "report/papers.h"

namespace steamworthy::report {

paper::Document labels(const Papers& papers) {
  const Context& context = papers.context;
  paper::Flow flow = begin(context, "labels", context.say("paper.kind_labels"));
  flow.paragraph(context.say("paper.labels_note"));
  constexpr double high = 27.0;
  constexpr std::size_t across = 3;
  const double wide = flow.width() / static_cast<double>(across);
  const auto& closures = context.boiler.closures;
  if (closures.empty()) flow.paragraph(context.say("paper.no_closures"));
  for (std::size_t from = 0; from < closures.size(); from += across) {
    flow.figure(
        high, context.say("paper.kind_labels"), [&](paper::Page& page, const paper::Box& box) {
          for (std::size_t i = from; i < std::min(from + across, closures.size()); ++i) {
            const boiler::Closure& one = closures[i];
            const paper::Box label{box.x + wide * static_cast<double>(i - from), box.y, wide, high};
            page.add(paper::rectangle(label), {0.1, {1.0, 1.0}, 0.6});
            paper::draw_code(page, {label.x + 1.5, label.y + 2.0, 23.0, 23.0},
                             context.boiler.tag + "/" + one.tag);
            const double x = label.x + 26.0, room = wide - 27.0;
            const double size =
                std::min(16.0, 16.0 * room / paper::text_width(one.tag, {16.0, true}));
            page.add(paper::Text{{x, label.y + 9.0}, one.tag, {size, true}});
            const boiler::Part* part = boiler::find_part(context.boiler, one.part);
            const paper::Font font{7.0, false};
            const std::string lines[] = {
                context.boiler.tag + ", " + (part == nullptr ? one.part : part->name),
                kind(context, boiler::token(one.kind)) + " " + opening_text(context, one),
                one.gasket ? kind(context, boiler::token(one.gasket->kind)) : ""};
            double y = label.y + 14.0;
            for (const std::string& line : lines) {
              page.add(paper::Text{{x, y}, paper::shorten(line, font, room), font});
              y += 3.6;
            }
          }
        });
  }
  return flow.finish();
}

}  // namespace steamworthy::report
