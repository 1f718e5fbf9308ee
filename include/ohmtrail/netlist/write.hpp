#pragma once
#include <memory>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "ohmtrail/netlist/read.hpp"
#include "ohmtrail/netlist/system.hpp"

namespace ohmtrail::netlist {

/// A whole system as a file; `read` gives it back equal (a percentage that no decimal of percent leads to: to
/// the last bit). Values at their default are left out.
[[nodiscard]] std::string to_json(const System& system);

/// A netlist as a person wrote it, with edits. Everything that is not edited keeps its bytes: order, blanks,
/// notes, the spelling of numbers. An edit that names an element or a section that is not there returns false
/// and changes nothing.
class Document {
 public:
  /// Takes a text that `read` accepts, else every mistake in it.
  [[nodiscard]] static tl::expected<Document, std::vector<Problem>> open(std::string text);

  Document(Document&&) noexcept;
  Document& operator=(Document&&) noexcept;
  ~Document();

  /// As it was read, without the edits.
  [[nodiscard]] const System& system() const;
  /// The file with the edits made so far; byte for byte the one opened where there are none.
  [[nodiscard]] std::string text() const;

  /// `resistance` of a battery, joint, switch, fuse, wire or termination, by its id or derived name (a bare
  /// run id means its wire). Of an opened end, `M/from` is the bolted contact and `M/from-crimp` the crimp.
  [[nodiscard]] bool set_resistance(std::string_view element, Resistance value);
  [[nodiscard]] bool set_emf(std::string_view battery, Voltage value);
  [[nodiscard]] bool set_takes(std::string_view load, const Takes& value);
  [[nodiscard]] bool set_fuse_rating(std::string_view fuse, Current value);
  /// Other cable in a run and its return. What was said of the old one and its ends goes with it: `sound`,
  /// `resistance`, `seen`.
  [[nodiscard]] bool replace_cable(std::string_view run, std::string_view gauge);
  /// The same cable anew, in a run and its return: as found (`resistance`, `seen`) goes, `sound` stays.
  [[nodiscard]] bool renew_cable(std::string_view run);
  [[nodiscard]] bool set_cable_kind(std::string_view run, trade::ConductorKind conductor,
                                    Temperature insulation);
  /// Another fuse, or a breaker of another rating: what was said of the old one goes with it.
  [[nodiscard]] bool replace_device(std::string_view device, Current rating);

  /// More of what the eye and hand found, on what `set_resistance` could name.
  [[nodiscard]] bool add_seen(std::string_view element, const Seen& seen);
  void add_reading(const Reading& reading);
  void remove_readings();
  /// Puts a sentence behind the file's own note.
  void add_to_note(std::string_view sentence);
  /// Sets `job`, whole.
  void set_job(const Job& job);

  void add(const Battery& battery);
  void add(const Charger& charger);
  void add(const Run& run);
  void add(const Joint& joint);
  void add(const Switch& one);
  void add(const Fuse& fuse);
  void add(const Shunt& shunt);
  void add(const Load& load);
  void add(const Case& one);
  void add(const Meter& meter);
  void add_stub(std::string_view point);
  void set_point(std::string_view name, const Point& point);

 private:
  struct State;
  explicit Document(std::unique_ptr<State> state);
  std::unique_ptr<State> state_;
};

}  // namespace ohmtrail::netlist
