#include <algorithm>
#include <cstdint>
#include <cstring>
#include <nlohmann/json.hpp>
#include <random>
#include <string>
#include <vector>

// Structure-aware mutation: the file stays JSON, and mostly a netlist, while its values run wild.

using Json = nlohmann::ordered_json;

extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t max_size);

namespace {

using Random = std::minstd_rand;

void gather(Json& node, std::vector<Json*>& all) {
  all.push_back(&node);
  if (!node.is_structured()) return;
  for (Json& child : node) gather(child, all);
}

std::vector<Json*> nodes(Json& root) {
  std::vector<Json*> all;
  gather(root, all);
  return all;
}

template <class Item>
Item& any(std::vector<Item>& items, Random& random) {
  return items[random() % items.size()];
}

Json wild_value(Random& random) {
  static std::vector<Json> wild{0,
                                1,
                                -1,
                                1e-6,
                                1e6,
                                1e-30,
                                1e30,
                                1e-308,
                                1e308,
                                12,
                                0.5,
                                100,
                                true,
                                nullptr,
                                "",
                                "all",
                                "0 ohm",
                                "1 uohm",
                                "1 Mohm",
                                "1e6 ohm",
                                "1e-9 ohm",
                                "1e12 ohm",
                                "0 V",
                                "1e-12 V",
                                "1e9 V",
                                "12 V",
                                "48 V",
                                "1 W",
                                "1e9 W",
                                "1e-9 W",
                                "0 A",
                                "1e9 A",
                                "1e-9 A",
                                "500 A",
                                "8 A",
                                "1.2 ohm",
                                "-40 C",
                                "85 C",
                                "-273 C",
                                "1e5 C",
                                "0 %",
                                "100 %",
                                "1e-9 %",
                                "1 mm",
                                "1e9 m",
                                "4/0 AWG",
                                "22 AWG",
                                "300 mm2",
                                "lfp",
                                "gel",
                                "agm",
                                "flooded",
                                "critical",
                                "test",
                                "contactor",
                                "contact-and-crimp",
                                "aluminium",
                                "crimped",
                                "engine-space",
                                Json::array(),
                                Json::object(),
                                "1 s",
                                "1e9 h"};
  return any(wild, random);
}

void scale_number(Json& node, Random& random) {
  static std::vector<double> factors{0, -1, 1e-12, 1e-6, 1e-3, 0.5, 1.5, 2, 10, 1e3, 1e6, 1e12};
  if (node.is_number()) node = node.get<double>() * any(factors, random);
}

/// Names are what joins a netlist: a text takes the place of another text.
void rename(Json& root, Json& node, Random& random) {
  std::vector<Json*> all = nodes(root);
  std::erase_if(all, [](const Json* one) { return !one->is_string(); });
  if (node.is_string() && !all.empty()) node = Json(*any(all, random));
}

void double_or_drop(Json& node, Random& random) {
  if (!node.is_array() || node.empty()) return;
  const auto at = static_cast<Json::difference_type>(random() % node.size());
  if (random() % 2 == 0) {
    node.erase(node.begin() + at);
    return;
  }
  Json copy = node[static_cast<std::size_t>(at)];
  if (copy.is_object() && copy.contains("id") && copy["id"].is_string())
    copy["id"] = copy["id"].get<std::string>() + std::to_string(random() % 100);
  node.push_back(std::move(copy));
}

void set_or_drop_key(Json& node, Random& random) {
  static std::vector<const char*> keys{
      "resistance", "sound",    "emf", "soc",      "closed",   "stops_below", "on_for", "rest_for", "takes",
      "length",     "capacity", "cca", "limit",    "setpoint", "efficiency",  "drop",   "rating",   "bundle",
      "ambient",    "open",     "on",  "chargers", "seen",     "class",       "inrush"};
  if (!node.is_object()) return;
  if (random() % 3 == 0 && !node.empty()) {
    auto at = node.begin();
    std::advance(at, static_cast<Json::difference_type>(random() % node.size()));
    node.erase(at.key());
  } else {
    node[any(keys, random)] = wild_value(random);
  }
}

void mutate(Json& root, Random& random) {
  std::vector<Json*> all = nodes(root);
  Json& node = *any(all, random);
  switch (random() % 6) {
    case 0:
      if (!node.is_structured()) node = wild_value(random);
      return;
    case 1:
      return scale_number(node, random);
    case 2:
      return rename(root, node, random);
    case 3:
      return double_or_drop(node, random);
    case 4:
      return set_or_drop_key(node, random);
    default:
      for (int tries = 0; tries < 20; ++tries)
        if (Json& one = *any(all, random); !one.is_structured()) {
          one = wild_value(random);
          return;
        }
  }
}

}  // namespace

extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size, std::size_t max_size,
                                               unsigned seed) {
  Random random(seed);
  Json root = Json::parse(data, data + size, nullptr, false);
  if (root.is_discarded() || random() % 32 == 0) return LLVMFuzzerMutate(data, size, max_size);
  for (std::uint_fast32_t times = 1 + random() % 3; times > 0; --times) mutate(root, random);
  const std::string text = root.dump(-1, ' ', false, Json::error_handler_t::replace);
  if (text.size() > max_size) return size;
  std::memcpy(data, text.data(), text.size());
  return text.size();
}
