#pragma once
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "ohmtrail/diagnose/next.hpp"
#include "ohmtrail/netlist/system.hpp"

/// The guided search as a state machine: it asks, takes what was typed, and says what is to be saved. It
/// reads nothing, writes nothing and knows no clock; whoever drives it does.
namespace ohmtrail::diagnose {

/// What the eye and hand found, and on which element.
struct SeenOn {
  std::string element;
  netlist::Seen seen;
};

/// The last reading is taken back.
struct TakeBack {};

/// What an answer adds to the file. It counts only once it was saved: see `Trace::update`.
using TraceChange = std::variant<netlist::Reading, SeenOn, TakeBack>;

struct Answered {
  std::vector<std::string> say;  ///< paragraphs
  std::optional<TraceChange> change;
};

class Trace {
 public:
  /// What is to be known before anything is touched; shown once.
  [[nodiscard]] static std::vector<std::string> cautions();

  /// Goes on where the readings of the file end.
  explicit Trace(netlist::System system);

  /// The file as it is after a change was saved.
  void update(netlist::System system);

  /// What must be heard before the question: a load of short duty, a change of what is switched on.
  [[nodiscard]] std::vector<std::string> remarks() const;
  /// One line.
  [[nodiscard]] std::string question() const;
  [[nodiscard]] Answered answer(std::string_view line);

  /// Fault found, nothing to find, nothing left that helps, or told to stop.
  [[nodiscard]] bool ended() const { return ended_; }
  /// Why it ended; empty before.
  [[nodiscard]] const std::string& ending() const { return ending_; }
  /// How things stand; null before the opening readings or where nothing could be inferred.
  [[nodiscard]] const NextResult* standing() const;

 private:
  void look();
  void choose();
  void end(std::string why);
  [[nodiscard]] std::optional<NextOption> check_again() const;
  [[nodiscard]] bool passed_over(const NextOption& option) const;
  [[nodiscard]] const netlist::Case* on() const;
  [[nodiscard]] Answered choose_case(std::string_view word);
  [[nodiscard]] Answered take_reading(std::string_view text);
  [[nodiscard]] Answered take_seen(std::string_view words);
  [[nodiscard]] Answered why() const;
  [[nodiscard]] Answered skip();

  netlist::System system_;
  std::string on_;  ///< case that is switched on; empty: not told yet
  std::optional<NextResult> next_;
  std::optional<NextOption> asked_;
  std::set<std::string> skipped_;
  bool again_ = false, ended_ = false;
  std::string ending_;
};

/// A new file from six answers: system voltage, battery, cable gauge, its length, what is between, load.
class StartForm {
 public:
  [[nodiscard]] bool complete() const { return step_ == 6; }
  [[nodiscard]] std::string question() const;
  /// What is wrong with the answer, or nothing where it was taken.
  [[nodiscard]] std::optional<std::string> answer(std::string_view line);
  /// The system, once complete.
  [[nodiscard]] netlist::System system() const;

 private:
  int step_ = 0;
  netlist::System system_;
  netlist::Battery battery_;
  netlist::Run run_;
  bool has_switch_ = false;
  std::optional<units::Current> fuse_, switch_rating_;
  netlist::Load load_;
};

}  // namespace ohmtrail::diagnose
