// Tags: written as they may be, each used once over everything, none ever reused.
#include <fmt/format.h>

#include <map>

#include "boiler/faults.h"

namespace steamworthy::boiler {
namespace {

constexpr std::size_t longest_tag = 32;

bool is_tag(const std::string& tag) {
  if (tag.empty() || tag.size() > longest_tag) return false;
  for (std::size_t i = 0; i < tag.size(); ++i) {
    const char c = tag[i];
    const bool letter_or_digit =
        (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
    if (!letter_or_digit && (i == 0 || (c != '-' && c != '_' && c != '/'))) return false;
  }
  return true;
}

std::string folded(std::string tag) {
  for (char& c : tag) {
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  }
  return tag;
}

class Register {
 public:
  Register(const Boiler& boiler, Faults& faults) : faults_(faults) {
    for (const std::string& tag : boiler.retired_tags) retired_[folded(tag)] = tag;
  }

  /// `kind` is the table's name in the file.
  void enter(const std::string& kind, const std::string& tag) {
    if (tag.empty()) return;  // reported as missing by whoever read it
    const std::string owner = fmt::format("{}[{}]", kind, tag);
    const std::string field = owner + ".tag";
    if (!is_tag(tag)) {
      faults_.add("boiler.bad_tag", field, tag,
                  fmt::format("up to {} letters, digits, hyphens, underscores and strokes, the "
                              "first a letter or digit",
                              longest_tag),
                  "cannot be a tag");
      return;
    }
    const std::string key = folded(tag);
    if (retired_.count(key) > 0) {
      faults_.add("boiler.retired_tag", field, tag, "a tag that was never used",
                  "is among the retired tags, and a tag is never used again");
    }
    const auto [at, fresh] = used_.emplace(key, owner);
    if (!fresh) {
      faults_.add("boiler.doubled_tag", field, tag, "a tag of its own",
                  fmt::format("is used already by {}", at->second));
    }
  }

 private:
  Faults& faults_;
  std::map<std::string, std::string> retired_;
  std::map<std::string, std::string> used_;
};

template <class Thing>
void enter_all(Register& book, const char* kind, const std::vector<Thing>& things) {
  for (const Thing& thing : things) book.enter(kind, thing.tag);
}

template <class Thing>
void check_names(const char* kind, const std::vector<Thing>& things, Faults& faults) {
  std::map<std::string, int> seen;
  for (const Thing& thing : things) {
    if (!thing.name.empty() && ++seen[thing.name] == 2) {
      faults.add("boiler.doubled_tag", fmt::format("{}[{}].name", kind, thing.name), thing.name,
                 "a name of its own", fmt::format("is the name of more than one {}", kind));
    }
  }
}

}  // namespace

void check_tags(const Boiler& boiler, Faults& faults) {
  Register book(boiler, faults);
  for (const Part& part : boiler.parts) {
    book.enter("part", part.tag);
    if (const auto* shell = std::get_if<FiretubeShell>(&part.shape)) {
      for (const Inside& inside : shell->inside) {
        book.enter(fmt::format("part[{}].inside", part.tag), inside.tag);
      }
    }
  }
  enter_all(book, "space", boiler.spaces);
  enter_all(book, "way_in", boiler.ways_in);
  enter_all(book, "closure", boiler.closures);
  enter_all(book, "internal", boiler.internals);
  enter_all(book, "mounting", boiler.mountings);
  enter_all(book, "isolation", boiler.isolations);
  enter_all(book, "temporary", boiler.temporaries);
  enter_all(book, "place_to_look", boiler.stated_places);
  enter_all(book, "gauge", boiler.gauges);
  enter_all(book, "thermometer", boiler.thermometers);
  check_names("section", boiler.sections, faults);
  check_names("material", boiler.materials, faults);
}

}  // namespace steamworthy::boiler
