#pragma once
#include <optional>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "ohmtrail/diagnose/infer.hpp"
#include "ohmtrail/netlist/system.hpp"

/// Where to put the probes next: the reading that is expected to tell most of which repair is due.
namespace ohmtrail::diagnose {

/// One thing that is repaired as a whole: a run with its lugs, the return of a run with its lugs, a joint,
/// switch, fuse or battery.
struct RepairChance {
  std::string id;                ///< element id, run id, or `RUN/return`
  std::string words;             ///< `the cable "M" with its lugs`
  double probability = 0;        ///< that something in it is faulty
  std::vector<std::string> ids;  ///< its elements and batteries, file order
  bool read_across = false;      ///< read across it alone: by volts under load or by four wires
};

/// What a reading is for.
enum class Purpose {
  opening,   ///< makes every later reading useful: current, battery voltage, load voltage
  separate,  ///< splits the suspects
  confirm    ///< across the one suspect that is left
};

struct NextOption {
  Purpose purpose = Purpose::separate;
  std::string in_case;
  std::string red, black;         ///< points; empty for a clamp reading
  std::string in;                 ///< element that the clamp goes round; empty for a voltage
  double gain_bits = 0;           ///< expected drop in entropy of "which repair is due"
  double expect_sound = 0;        ///< V or A of a sound system under these loads
  double expect_faulty = 0;       ///< from this value on, away from `expect_sound`, it is bad
  std::vector<std::string> bad;   ///< repairs suspected if it is bad, most probable first
  std::vector<std::string> good;  ///< those suspected if it is not
  std::string where;              ///< "red on …, black on …" or "clamp round …"
  std::string why;                ///< one or two sentences
  bool tools = false;             ///< something must be opened to get there
  double leads = 0;               ///< m of wire between the probes: long leads
  bool switching = false;         ///< what is switched on must change
  double score = 0;               ///< gain less what the reading costs; options come by it
};

enum class Verdict {
  go_on,            ///< take the first option
  found,            ///< what is sure explains the sag, and no other reading is needed
  sound,            ///< nothing is faulty, as far as these loads can show
  cannot_separate,  ///< what is left looks alike to this meter at this load
};

struct NextResult {
  std::vector<NextOption> options;    ///< best first; none where what is sure leaves none worth taking
  std::vector<RepairChance> repairs;  ///< by falling probability
  double nothing_faulty = 0;          ///< probability
  Verdict verdict = Verdict::go_on;
  std::string verdict_text;  ///< why, in words; also says where the search was made coarser
  bool coarse = false;       ///< not every pair of points was weighed
  InferResult inference;
};

/// A reading by where it is taken.
struct ReadingPlace {
  std::string in_case, in, red, black;
  friend bool operator==(const ReadingPlace&, const ReadingPlace&) = default;
};

struct NextOptions {
  std::string present;   ///< case that is switched on now; empty: that of the last reading
  std::size_t most = 5;  ///< options listed
  std::vector<ReadingPlace> passed_over = {};  ///< that cannot be taken and are not offered
  std::size_t most_points = 64;  ///< points whose pairs are weighed; more make the search coarse
  std::size_t most_states = 48;  ///< hypotheses that are told apart
};

/// How sure is sure enough for one repair.
inline constexpr double sure_enough = 0.95;

[[nodiscard]] tl::expected<NextResult, InferFailure> next_reading(const netlist::System& system,
                                                                  const NextOptions& options = {});

}  // namespace ohmtrail::diagnose
