// Parts: the one kind of table whose keys depend on its shape.
#include <cmath>

#include "units/number_text.h"
#include "wire/describe.h"

namespace steamworthy::wire {

// Not in the unnamed namespace: list() must find it.
template <class Io, Is<boiler::Inside> T>
void fields(Io& io, T& inside) {
  io.text("tag", inside.tag);
  io.text("name", inside.name);
  io.word("kind", inside.kind);
  io.whole("count", inside.count);
  io.whole("rows", inside.rows);
  io.measure("outer_diameter", inside.outer_diameter, Kind::Size);
  io.measure("wall", inside.wall, Kind::Size);
  io.measure("length", inside.length, Kind::Distance);
  io.measure("bottom_level", inside.bottom_level, Kind::Level);
  io.measure("top_level", inside.top_level, Kind::Level);
  io.flag("corrugated", inside.corrugated);
  io.text("material", inside.material);
  io.measure("measured_wall", inside.measured_wall, Kind::Size);
}

namespace {

using boiler::Cylinder;
using boiler::FiretubeShell;
using boiler::Head;
using boiler::Inside;
using boiler::Part;
using boiler::SquareHeader;
using boiler::Tubes;
using units::Length;
using units::Level;

constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();

// The words of `shape`, in the order of boiler::Shape.
constexpr std::string_view shape_words[] = {"cylinder", "square_header", "tubes", "firetube_shell"};

/// Reads one of several keys that say the same thing in different ways; says
/// which, or -1 after having reported none or more than one.
int read_one_of(ObjectReader& io, const std::vector<const char*>& keys, Kind kind, double& si) {
  int which = -1;
  bool twice = false;
  std::vector<std::string_view> names;
  for (std::size_t i = 0; i < keys.size(); ++i) {
    names.push_back(keys[i]);
    const bool there = io.has_measure(keys[i], kind);
    Length value = Length::from_si(not_a_number);
    io.measure(keys[i], value, kind, Need::Optional);
    if (!there) continue;
    twice = twice || which >= 0;
    which = static_cast<int>(i);
    si = value.si();
  }
  if (which < 0) {
    io.missing(keys.front(), listed(names));
  } else if (twice) {
    io.add("wire.stated_twice", keys[static_cast<std::size_t>(which)], "",
           "only one of " + listed(names), "says what another key says already");
    si = not_a_number;
    return -1;
  }
  return which;
}

Length read_inner_diameter(ObjectReader& io, Length wall) {
  double si = not_a_number;
  const int which = read_one_of(io, {"inner_diameter", "outer_diameter"}, Kind::Size, si);
  return which == 1 ? Length::from_si(si) - 2.0 * wall : Length::from_si(si);
}

/// `level` of the axis, or the level of the lowest or highest water: moves the
/// part, whose centre stands at zero until then.
void read_centre(ObjectReader& io, Part& part, Level& centre) {
  double si = not_a_number;
  const int which = read_one_of(io, {"level", "bottom_level", "top_level"}, Kind::Level, si);
  Length shift = Length::from_si(si);
  if (which == 1) shift -= lowest(part).from_origin();
  if (which == 2) shift -= highest(part).from_origin();
  centre = Level{} + shift;
}

template <class Io, Is<Head> T>
void head_fields(Io& io, T& head) {
  io.word("kind", head.kind);
  io.measure("wall", head.wall, Kind::Size);
  io.measure("measured_wall", head.measured_wall, Kind::Size);
  switch (head.kind) {
    case boiler::HeadKind::Elliptical:
      io.number("ratio", head.ratio, Kind::Count);
      break;
    case boiler::HeadKind::Torispherical:
      io.measure("crown_radius", head.crown_radius, Kind::Size);
      io.measure("knuckle_radius", head.knuckle_radius, Kind::Size);
      break;
    case boiler::HeadKind::Flat:
      io.flag("stayed", head.stayed);
      break;
    case boiler::HeadKind::Hemispherical:
      break;
  }
}

Head read_head(ObjectReader& table) {
  Head head;
  head_fields(table, head);
  table.refuse_unknown();
  return head;
}

void read_heads(ObjectReader& io, boiler::PartKind kind, Cylinder& shape) {
  if (auto both = io.table("heads")) {
    shape.heads.assign(2, read_head(*both));
    for (const char* key : {"first_head", "second_head"}) {
      if (io.has(key)) {
        io.add("wire.stated_twice", key, "", "either heads, or first_head and second_head",
               "is stated beside heads");
      }
      io.note(key);
    }
    return;
  }
  const bool any = io.has("first_head") || io.has("second_head");
  const Need need = any ? Need::Required : Need::Optional;
  auto first = io.table("first_head", need);
  auto second = io.table("second_head", need);
  if (first) shape.heads.push_back(read_head(*first));
  if (second) shape.heads.push_back(read_head(*second));
  if (!any && !io.has("heads") && kind != boiler::PartKind::Pipe) {
    io.missing("heads", "a table such as { kind = \"elliptical\", ratio = 2, wall = \"50 mm\" }");
  }
}

void read_shape(ObjectReader& io, Part& part, Cylinder shape) {
  io.word("axis", shape.axis, Need::Optional);
  io.measure("wall", shape.wall, Kind::Size);
  shape.inner_diameter = read_inner_diameter(io, shape.wall);
  io.measure("length", shape.length, Kind::Distance);
  if (shape.axis == boiler::Axis::Inclined) io.measure("rise", shape.rise, Kind::Distance);
  read_heads(io, part.kind, shape);
  part.shape = shape;
  read_centre(io, part, shape.centre_level);
  part.shape = shape;
}

void read_shape(ObjectReader& io, Part& part, SquareHeader shape) {
  double si = not_a_number;
  io.measure("wall", shape.wall, Kind::Size);
  const int which = read_one_of(io, {"inner_width", "outer_width"}, Kind::Size, si);
  shape.inner_width = which == 1 ? Length::from_si(si) - 2.0 * shape.wall : Length::from_si(si);
  io.measure("corner_radius", shape.corner_radius, Kind::Size, Need::Optional);
  io.measure("length", shape.length, Kind::Distance);
  part.shape = shape;
  read_centre(io, part, shape.centre_level);
  part.shape = shape;
}

void read_shape(ObjectReader& io, Part& part, Tubes shape) {
  io.measure("wall", shape.wall, Kind::Size);
  double si = not_a_number;
  const int which = read_one_of(io, {"outer_diameter", "inner_diameter"}, Kind::Size, si);
  shape.outer_diameter = which == 1 ? Length::from_si(si) + 2.0 * shape.wall : Length::from_si(si);
  io.measure("length", shape.length, Kind::Distance);
  io.measure("bottom_level", shape.bottom_level, Kind::Level);
  io.measure("top_level", shape.top_level, Kind::Level);
  io.word("run", shape.run, Need::Optional);
  io.whole("plugged", shape.plugged);
  io.text("from", shape.from);
  io.text("to", shape.to);
  // Not a number until complete_tube_ends() has seen the parts at the ends.
  shape.from_level = shape.to_level = Level::from_si(not_a_number);
  io.measure("from_level", shape.from_level, Kind::Level, Need::Optional);
  io.measure("to_level", shape.to_level, Kind::Level, Need::Optional);
  part.shape = std::move(shape);
}

Inside read_inside(ObjectReader& io) {
  Inside inside;
  io.text("tag", inside.tag, Need::Required);
  io.text("name", inside.name);
  io.word("kind", inside.kind);
  io.whole("count", inside.count);
  io.whole("rows", inside.rows);
  io.measure("outer_diameter", inside.outer_diameter, Kind::Size);
  io.measure("wall", inside.wall, Kind::Size);
  io.measure("length", inside.length, Kind::Distance);
  if (io.has_measure("level", Kind::Level)) {
    Level axis;
    io.measure("level", axis, Kind::Level);
    inside.bottom_level = axis - 0.5 * inside.outer_diameter;
    inside.top_level = axis + 0.5 * inside.outer_diameter;
  } else {
    io.note_measure("level", Kind::Level);
    io.measure("bottom_level", inside.bottom_level, Kind::Level);
    io.measure("top_level", inside.top_level, Kind::Level);
  }
  io.flag("corrugated", inside.corrugated);
  io.text("material", inside.material);
  io.measure("measured_wall", inside.measured_wall, Kind::Size);
  io.refuse_unknown();
  return inside;
}

void read_shape(ObjectReader& io, Part& part, FiretubeShell shape) {
  io.measure("wall", shape.wall, Kind::Size);
  shape.inner_diameter = read_inner_diameter(io, shape.wall);
  io.measure("length", shape.length, Kind::Distance);
  io.measure("plate_wall", shape.plate_wall, Kind::Size);
  for (ObjectReader& inside : io.tables("inside", "tag")) {
    shape.inside.push_back(read_inside(inside));
  }
  part.shape = shape;
  read_centre(io, part, shape.centre_level);
  part.shape = std::move(shape);
}

/// Index into shape_words: as written, else as usual for the kind of part.
int read_shape_word(ObjectReader& io, boiler::PartKind kind) {
  std::string written;
  io.text("shape", written);
  if (written.empty()) {
    if (kind == boiler::PartKind::TubeBank || kind == boiler::PartKind::Coil) return 2;
    return kind == boiler::PartKind::Shell && io.has("inside") ? 3 : 0;
  }
  for (char& c : written) c = c == ' ' || c == '-' ? '_' : c;
  for (int i = 0; i < 4; ++i) {
    if (written == shape_words[i]) return i;
  }
  io.add("wire.unknown_word", "shape", units::quotable(written),
         listed({std::begin(shape_words), std::end(shape_words)}), "is not a word known here");
  return -1;
}

void write_head(ObjectWriter& io, const char* key, const Head& head) {
  Json json = Json::object();
  ObjectWriter writer(json);
  head_fields(writer, head);
  io.json()[key] = std::move(json);
}
void write_head(ObjectRounder& io, const char*, Head& head) { head_fields(io, head); }

// Writing and rounding visit the same fields; reading also takes other ways to
// state them.
template <class Io, Is<Cylinder> T>
void fields(Io& io, T& shape) {
  io.word("axis", shape.axis);
  io.measure("wall", shape.wall, Kind::Size);
  io.measure("inner_diameter", shape.inner_diameter, Kind::Size);
  io.measure("length", shape.length, Kind::Distance);
  if (shape.axis == boiler::Axis::Inclined) io.measure("rise", shape.rise, Kind::Distance);
  if (shape.heads.size() == 2) {
    write_head(io, "first_head", shape.heads[0]);
    write_head(io, "second_head", shape.heads[1]);
  }
  io.measure("level", shape.centre_level, Kind::Level);
}

template <class Io, Is<SquareHeader> T>
void fields(Io& io, T& shape) {
  io.measure("wall", shape.wall, Kind::Size);
  io.measure("inner_width", shape.inner_width, Kind::Size);
  io.measure("corner_radius", shape.corner_radius, Kind::Size);
  io.measure("length", shape.length, Kind::Distance);
  io.measure("level", shape.centre_level, Kind::Level);
}

template <class Io, Is<Tubes> T>
void fields(Io& io, T& shape) {
  io.measure("wall", shape.wall, Kind::Size);
  io.measure("outer_diameter", shape.outer_diameter, Kind::Size);
  io.measure("length", shape.length, Kind::Distance);
  io.measure("bottom_level", shape.bottom_level, Kind::Level);
  io.measure("top_level", shape.top_level, Kind::Level);
  io.word("run", shape.run);
  io.whole("plugged", shape.plugged);
  io.text("from", shape.from);
  io.text("to", shape.to);
  io.measure("from_level", shape.from_level, Kind::Level);
  io.measure("to_level", shape.to_level, Kind::Level);
}

template <class Io, Is<FiretubeShell> T>
void fields(Io& io, T& shape) {
  io.measure("wall", shape.wall, Kind::Size);
  io.measure("inner_diameter", shape.inner_diameter, Kind::Size);
  io.measure("length", shape.length, Kind::Distance);
  io.measure("plate_wall", shape.plate_wall, Kind::Size);
  io.measure("level", shape.centre_level, Kind::Level);
  list(io, "inside", shape.inside, "tag");
}

/// What every part has, before and after its shape.
template <class Io, Is<Part> T>
void common_fields(Io& io, T& part) {
  io.text("tag", part.tag, Need::Required);
  io.text("name", part.name, Need::Required);
  io.word("kind", part.kind);
  io.text("section", part.section, Need::Required);
  io.text("space", part.space);
  io.whole("count", part.count);
  io.text("material", part.material);
  io.measure("measured_wall", part.measured_wall, Kind::Size);
  io.number("ligament_efficiency", part.ligament_efficiency, Kind::Fraction);
  io.word("group", part.group);
  optional_table(io, "place", part.place);
}

}  // namespace

void read_part(ObjectReader& io, Part& part) {
  common_fields(io, part);
  switch (read_shape_word(io, part.kind)) {
    case 0:
      return read_shape(io, part, Cylinder{});
    case 1:
      return read_shape(io, part, SquareHeader{});
    case 2:
      return read_shape(io, part, Tubes{});
    case 3:
      return read_shape(io, part, FiretubeShell{});
    default:
      part.shape = Cylinder{};
      std::get<Cylinder>(part.shape).length = Length::from_si(not_a_number);
      io.forgive_unknown();
  }
}

void write_part(ObjectWriter& io, const Part& part) {
  common_fields(io, part);
  io.text("shape", std::string(shape_words[part.shape.index()]));
  std::visit([&](const auto& shape) { fields(io, shape); }, part.shape);
}

void write_part(ObjectRounder& io, Part& part) {
  common_fields(io, part);
  std::visit([&](auto& shape) { fields(io, shape); }, part.shape);
}

}  // namespace steamworthy::wire
