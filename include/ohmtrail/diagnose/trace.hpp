#pragma once
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "ohmtrail/diagnose/duty_clock.hpp"
#include "ohmtrail/diagnose/next.hpp"
#include "ohmtrail/netlist/system.hpp"

/// The guided search as a state machine: it asks, takes what was typed, and says what is to be saved. It
/// reads nothing, writes nothing and has no clock; whoever drives it does.
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
  std::vector<std::string> at_once;  ///< paragraphs that matter now: a load to be switched off
  std::vector<std::string> say;      ///< paragraphs; where there is a change, once it was saved
  std::optional<TraceChange> change;
};

/// Every `now` is of one clock that never goes back.
class Trace {
 public:
  /// What is to be known before anything is touched; shown once.
  [[nodiscard]] static std::vector<std::string> cautions();

  /// Goes on where the readings of the file end; `idle` is how long ago the last of them was saved.
  explicit Trace(netlist::System system, units::Time now = {}, units::Time idle = {});

  /// The file as it is after a change was saved.
  void update(netlist::System system, units::Time now);

  /// What must be heard before the question: a load of short duty, a change of what is switched on.
  [[nodiscard]] std::vector<std::string> remarks(units::Time now) const;
  /// One line.
  [[nodiscard]] std::string question(units::Time now) const;
  [[nodiscard]] Answered answer(std::string_view line, units::Time now);

  /// How long an answer may be waited for before `lapse` must be told; empty: for ever.
  [[nodiscard]] std::optional<units::Time> patience(units::Time now) const;
  /// That time is over: what to say at once.
  [[nodiscard]] std::vector<std::string> lapse(units::Time now);

  /// Fault found, nothing to find, nothing left that helps, or told to stop.
  [[nodiscard]] bool ended() const { return ended_; }
  /// Why it ended; empty before.
  [[nodiscard]] const std::string& ending() const { return ending_; }
  /// How things stand; null before the opening readings or where nothing could be inferred.
  [[nodiscard]] const NextResult* standing() const;
  /// Readings that the last change has put in doubt, in words.
  [[nodiscard]] const std::vector<std::string>& doubts() const { return doubts_; }

 private:
  void look(units::Time now);
  void choose(units::Time now);
  void end(std::string why);
  [[nodiscard]] DutyClock::Ids short_duty() const;
  void switch_off(units::Time now, Answered& out);
  [[nodiscard]] Answered ready(units::Time now);
  [[nodiscard]] Answered choose_case(std::string_view word, units::Time now);
  [[nodiscard]] Answered take_reading(std::string_view text, units::Time now);
  [[nodiscard]] Answered take_back(units::Time now);
  [[nodiscard]] Answered take_seen(std::string_view words, units::Time now);
  [[nodiscard]] Answered why() const;
  [[nodiscard]] Answered skip(units::Time now);

  netlist::System system_;
  std::string home_;  ///< case that the search began in; empty: not told yet
  std::string on_;    ///< case that is switched on
  std::optional<NextResult> next_;
  std::optional<NextOption> asked_;
  std::vector<ReadingPlace> skipped_, skipped_checks_;
  std::set<std::size_t> doubted_;
  std::vector<std::string> doubts_;
  DutyClock clock_;
  units::Time begun_, asked_since_;
  double minutes_before_ = 0;  ///< that had passed by the file when this search began
  bool again_ = false;         ///< the question repeats an opening reading
  bool over_ = false;          ///< the load was switched off before an answer came
  bool ended_ = false;
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
