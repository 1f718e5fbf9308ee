#pragma once
#include <set>
#include <string>
#include <string_view>
#include <unordered_map>

#include "network/table_values.hpp"
#include "ohmtrail/network/network.hpp"

/// Makes the elements of one network, section by section.
namespace ohmtrail::network {

/// Names that readings, places and cases give to single parts: they open the ends they belong to.
[[nodiscard]] std::set<std::string> names_in_use(const netlist::System& system);

class Builder {
 public:
  Builder(const netlist::System& system, const netlist::Case& in_case);
  [[nodiscard]] Network build();

 private:
  int point(const std::string& name);
  Element& add(std::string id, Role role, const std::string& from, const std::string& to, Origin origin);

  void add_batteries();
  void add_chargers();
  void add_runs();
  void add_joints();
  void add_switches();
  void add_fuses();
  void add_shunts();
  void add_isolators();
  void add_loads();
  void add_converters();

  /// One conductor of a run: termination, wire, termination.
  struct Conductor {
    std::string prefix;  ///< "" or "return-", before the part's name
    const std::string &from, &to;
    const netlist::RunEnd &end_from, &end_to;
    const netlist::Resistances& wire;
    Part part_from, part_from_crimp, part_wire, part_to_crimp, part_to;
  };
  void add_conductor(const netlist::Run& run, std::size_t index, const Conductor& conductor);
  /// One end, in one element or two; `outer` is the point that the lug is bolted to.
  struct End {
    std::string name;  ///< "from", "return-to", …
    const std::string& outer;
    const netlist::RunEnd& as_given;
    Part contact, crimp;
    bool at_start;
  };
  void add_end(const netlist::Run& run, std::size_t index, const End& end);
  [[nodiscard]] bool opened(const std::string& run, const std::string& end) const;

  [[nodiscard]] bool is_open(const std::string& id) const { return open_.contains(id); }

  const netlist::System& system_;
  const netlist::Case& case_;
  Surroundings around_;
  std::set<std::string> open_, closed_, on_, charging_, named_;
  std::unordered_map<std::string, int> point_index_;
  Network network_;
};

}  // namespace ohmtrail::network
