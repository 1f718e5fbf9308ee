#include "netlist/object.hpp"

#include <fmt/format.h>

#include "netlist/key_hint.hpp"
#include "netlist/nearest.hpp"

namespace ohmtrail::netlist {

bool tell_duplicate_key(Reader& reader, Value member) {
  reader.problems.error_at_key(
      member, {"duplicate-key", fmt::format("the key \"{}\" stands twice", shown(member.key())),
               "each key once", "take one of them out"});
  return false;
}

void tell_duplicate_keys(Reader& reader, Value object) {
  std::vector<Value> members;
  for (const Value member : object.children()) members.push_back(member);
  constexpr std::size_t few = 12;  // comparing pairs is quicker than sorting then
  if (members.size() <= few) {
    bool distinct = true;
    for (std::size_t i = 1; i < members.size() && distinct; ++i) {
      for (std::size_t j = 0; j < i; ++j) distinct = distinct && members[i].key() != members[j].key();
    }
    if (distinct) return;
  }
  std::stable_sort(members.begin(), members.end(), [](Value a, Value b) { return a.key() < b.key(); });
  for (std::size_t i = 1; i < members.size(); ++i) {
    if (members[i].key() != members[i - 1].key()) continue;
    tell_duplicate_key(reader, members[i]);
  }
}

void tell_unknown_key(Reader& reader, Value member, const std::vector<std::string_view>& known) {
  Remark remark{"unknown-key", "", "", ""};
  if (reader.problems.listing()) {
    const std::string_view key = member.key();
    remark.text = fmt::format("unknown key \"{}\"", shown(key));
    remark.hint = did_you_mean(key, known);
    const std::string_view synonym = remark.hint.empty() ? key_synonym(key, known) : std::string_view();
    if (!synonym.empty()) remark.hint = fmt::format("did you mean \"{}\"?", synonym);
    remark.expected = "one of " + one_of(known);
  }
  reader.problems.error_at_key(member, std::move(remark));
}

void tell_missing_key(Reader& reader, Value object, std::string_view key, std::string_view sentence) {
  reader.problems.missing(
      object, key, {"missing-key", fmt::format("the key \"{}\" is missing", key), std::string(sentence), ""});
}

bool read_note(Reader& reader, Value value, std::string* note) {
  std::string text;
  if (!Text::read(reader, value, text)) return false;
  if (note != nullptr) *note = std::move(text);
  return true;
}

}  // namespace ohmtrail::netlist
