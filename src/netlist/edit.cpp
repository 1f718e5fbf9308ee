#include "netlist/edit.hpp"

namespace ohmtrail::netlist {

bool Target::is_object() const {
  if (json != nullptr) return json->is_object();
  return value.exists() && value.is(Kind::object) && !patch->removed;
}

Target Target::member(std::string_view key) const {
  if (json != nullptr) return {{}, nullptr, &(*json)[std::string(key)]};
  Patch& edit = patch->member(key);
  return {value.member(key), &edit, edit.value ? &*edit.value : nullptr};
}

Target Target::member_object(std::string_view key) const {
  const Target target = member(key);
  if (!target.is_object()) target.replace(Json::object());
  return member(key);
}

void Target::replace(Json by) const {
  if (json != nullptr) {
    *json = std::move(by);
    return;
  }
  *patch = Patch{};
  patch->value = std::move(by);
}

void Target::remove(std::string_view key) const {
  if (json != nullptr) {
    json->erase(std::string(key));
    return;
  }
  Patch& edit = patch->member(key);
  edit = Patch{};
  edit.removed = true;
}

void Target::append(std::string_view key, Json item) const {
  const Target list = member(key);
  const bool stands =
      list.json == nullptr && list.value.exists() && list.value.is(Kind::array) && !list.patch->removed;
  if (stands) {
    list.patch->appended.push_back(std::move(item));
    return;
  }
  if (list.json == nullptr || !list.json->is_array()) list.replace(Json::array());
  const Target fresh = member(key);
  // A member that was just replaced holds JSON. NOLINTNEXTLINE(clang-analyzer-core.CallAndMessage)
  fresh.json->push_back(std::move(item));
}

}  // namespace ohmtrail::netlist
