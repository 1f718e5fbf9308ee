#include "ohmtrail/netlist/write.hpp"

#include <fmt/format.h>

#include "netlist/edit.hpp"
#include "netlist/parse.hpp"
#include "netlist/sections.hpp"
#include "ohmtrail/netlist/names.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::netlist {

struct Document::State {
  explicit State(std::string file_text) : text(std::move(file_text)), tree(*parse(text)) {}

  std::string text;
  Tree tree;
  System system;
  std::optional<Names> names;
  Patch patch;
  std::map<Section, std::vector<Value>> items;  ///< of sections that were edited

  [[nodiscard]] Target root() { return {tree.root(), &patch, nullptr}; }

  [[nodiscard]] Target item(ElementPlace place) {
    const Target list = root().member(section_key(place.section));
    std::vector<Value>& known = items[place.section];
    if (known.empty()) {
      for (const Value child : list.value.children()) known.push_back(child);
    }
    return {known.at(place.index), &list.patch->items[place.index], nullptr};
  }

  [[nodiscard]] std::optional<Target> element(std::string_view id, Section wanted) {
    const auto place = names->element(id);
    if (!place || place->section != wanted) return std::nullopt;
    return item(*place);
  }

  /// The object that holds `resistance` and `seen` of an element, by its id or derived name.
  [[nodiscard]] std::optional<Target> passive(std::string_view name);
  [[nodiscard]] std::optional<Target> part_of_run(const Run& run, Target target, std::string_view part);

  /// Takes these keys off both conductors of a run, their ends and the ends' crimps.
  void forget(const Run& run, const Target& target, const std::vector<const char*>& keys) const;

  template <class Item>
  void add(std::string_view section, const Item& item) {
    root().append(section, Object<Item>::write(item));
  }
};

namespace {

Json end_in_full(const RunEnd& end) {
  Json object = {{"kind", word(end.kind)}};
  object.update(Object<RunEnd>::write(end));
  return object;
}

/// One end as an object, written out where the file has but a word for it, or inherits it.
Target end_of(Target conductor, std::string_view which, const RunEnd& from, const RunEnd& to) {
  Target ends = conductor.member("ends");
  if (!ends.is_object()) ends.replace({{"from", end_in_full(from)}, {"to", end_in_full(to)}});
  Target end = conductor.member("ends").member(which);
  if (!end.is_object()) end.replace(end_in_full(which == "from" ? from : to));
  return conductor.member("ends").member(which);
}

}  // namespace

std::optional<Target> Document::State::part_of_run(const Run& run, Target target, std::string_view part) {
  const RunEnd* from = &run.end_from;
  const RunEnd* to = &run.end_to;
  if (constexpr std::string_view prefix = "return-"; part.starts_with(prefix)) {
    part.remove_prefix(prefix.size());
    from = &run.return_conductor->end_from;
    to = &run.return_conductor->end_to;
    target = target.member("return");
  }
  if (part.empty() || part == "wire") return target;
  const bool crimp = part.ends_with("-crimp");
  const Target end = end_of(target, part.starts_with("from") ? "from" : "to", *from, *to);
  return crimp ? end.member_object("crimp") : end;
}

void Document::State::forget(const Run& run, const Target& target,
                             const std::vector<const char*>& keys) const {
  std::vector<Target> places{target};
  if (run.return_conductor) places.push_back(target.member("return"));
  const std::size_t conductors = places.size();
  for (std::size_t k = 0; k < conductors; ++k) {
    const Target ends = places[k].member("ends");
    if (!ends.is_object()) continue;
    for (const char* which : {"from", "to"}) {
      const Target end = ends.member(which);
      if (!end.is_object()) continue;
      places.push_back(end);
      if (const Target crimp = end.member("crimp"); crimp.is_object()) places.push_back(crimp);
    }
  }
  for (const Target& place : places)
    for (const char* key : keys) place.remove(key);
}

std::optional<Target> Document::State::passive(std::string_view name) {
  if (!names->has_element(name)) return std::nullopt;
  const SplitName split = split_element_name(name);
  const ElementPlace place = *names->element(split.owner);
  switch (place.section) {
    case Section::runs:
      return part_of_run(system.runs[place.index], item(place), split.part);
    case Section::batteries:
    case Section::joints:
    case Section::switches:
    case Section::fuses:
      return item(place);
    default:
      return std::nullopt;
  }
}

tl::expected<Document, std::vector<Problem>> Document::open(std::string text) {
  auto good = read(text);
  if (!good) return tl::unexpected(std::move(good.error()));
  auto state = std::make_unique<State>(std::move(text));
  state->system = std::move(good->system);
  state->names.emplace(state->system);
  return Document(std::move(state));
}

Document::Document(std::unique_ptr<State> state) : state_(std::move(state)) {}
Document::Document(Document&&) noexcept = default;
Document& Document::operator=(Document&&) noexcept = default;
Document::~Document() = default;

const System& Document::system() const {
  return state_->system;
}

std::string Document::text() const {
  const Value root = state_->tree.root();
  std::string out(state_->text.substr(0, root.begin()));
  print_patched(root, state_->patch, out);
  return out + state_->text.substr(root.end());
}

bool Document::set_resistance(std::string_view element, Resistance value) {
  const auto target = state_->passive(element);
  if (target) target->set("resistance", value.si());
  return target.has_value();
}

bool Document::set_emf(std::string_view battery, Voltage value) {
  const auto target = state_->element(battery, Section::batteries);
  if (target) target->set("emf", value.si());
  return target.has_value();
}

bool Document::set_takes(std::string_view load, const Takes& value) {
  const auto target = state_->element(load, Section::loads);
  if (target) target->set("takes", TakesCodec::write(value));
  return target.has_value();
}

bool Document::set_fuse_rating(std::string_view fuse, Current value) {
  const auto target = state_->element(fuse, Section::fuses);
  if (target) target->set("rating", fmt::format("{} A", units::exact(value.si())));
  return target.has_value();
}

bool Document::replace_cable(std::string_view run, std::string_view gauge) {
  const auto target = state_->element(run, Section::runs);
  if (!target) return false;
  target->set("gauge", std::string(gauge));
  state_->forget(state_->system.runs[state_->names->element(run)->index], *target,
                 {"sound", "resistance", "seen", "crimp"});
  return true;
}

bool Document::renew_cable(std::string_view run) {
  const auto target = state_->element(run, Section::runs);
  if (!target) return false;
  state_->forget(state_->system.runs[state_->names->element(run)->index], *target, {"resistance", "seen"});
  return true;
}

bool Document::set_cable_kind(std::string_view run, trade::ConductorKind conductor, Temperature insulation) {
  const auto target = state_->element(run, Section::runs);
  if (!target) return false;
  const Run& old = state_->system.runs[state_->names->element(run)->index];
  if (conductor != old.conductor) target->set("conductor", word(conductor));
  if (insulation != old.insulation) target->set("insulation", insulation.celsius());
  return true;
}

bool Document::replace_device(std::string_view device, Current rating) {
  auto target = state_->element(device, Section::fuses);
  if (!target) target = state_->element(device, Section::switches);
  if (!target) return false;
  target->set("rating", fmt::format("{} A", units::exact(rating.si())));
  for (const char* key : {"sound", "resistance", "seen"}) target->remove(key);
  return true;
}

bool Document::add_seen(std::string_view element, const Seen& seen) {
  const auto target = state_->passive(element);
  if (!target) return false;
  for (const trade::Observation one : seen) target->append("seen", word(one));
  return true;
}

void Document::add_reading(const Reading& reading) {
  state_->root().append("readings", ReadingCodec::write(reading));
}

void Document::remove_readings() {
  state_->root().remove("readings");
}

void Document::add_to_note(std::string_view sentence) {
  const Target root = state_->root();
  const Patch& edit = root.patch->member("note");
  const std::string before = edit.value ? edit.value->get<std::string>() : state_->system.note;
  root.set("note", before.empty() ? std::string(sentence) : fmt::format("{} {}", before, sentence));
}

void Document::set_job(const Job& job) {
  state_->root().member("system").set("job", Object<Job>::write(job));
}

void Document::add(const Battery& battery) {
  state_->add("batteries", battery);
}
void Document::add(const Charger& charger) {
  state_->add("chargers", charger);
}
void Document::add(const Run& run) {
  state_->add("runs", run);
}
void Document::add(const Joint& joint) {
  state_->add("joints", joint);
}
void Document::add(const Switch& one) {
  state_->add("switches", one);
}
void Document::add(const Fuse& fuse) {
  state_->add("fuses", fuse);
}
void Document::add(const Shunt& shunt) {
  state_->add("shunts", shunt);
}
void Document::add(const Load& load) {
  state_->add("loads", load);
}
void Document::add(const Case& one) {
  state_->add("cases", one);
}
void Document::add(const Meter& meter) {
  state_->add("meters", meter);
}
void Document::add_stub(std::string_view point) {
  state_->root().append("stubs", std::string(point));
}

void Document::set_point(std::string_view name, const Point& point) {
  state_->root().member_object("points").set(name, Object<Point>::write(point));
}

}  // namespace ohmtrail::netlist
