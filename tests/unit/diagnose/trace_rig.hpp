#pragma once
#include <gtest/gtest.h>

#include <regex>
#include <string>
#include <variant>

#include "ohmtrail/diagnose/trace.hpp"
#include "ohmtrail/netlist/read.hpp"

/// An invented system to search in: a cable and eight like joints in a row between battery and load, the
/// joint numbered `bad` with 4 mΩ where 0.2 is sound. Its load draws 100 A; what a meter shows anywhere is
/// known.
namespace ohmtrail::test {

class TraceRig {
 public:
  static constexpr int joints = 8;

  explicit TraceRig(int bad, std::string load_keys = "") : bad_(bad), load_keys_(std::move(load_keys)) {
    system = parsed();
  }

  netlist::System system;

  /// What the meter shows where the question asks for it.
  [[nodiscard]] std::string shown(std::string question) const {
    static const std::regex barrel("the barrel of \"lead\" at \"([^\"]+)\"");
    for (std::smatch at; std::regex_search(question, at, barrel);)
      question = at.prefix().str() + (at[1] == "+" ? "\"lead@from\"" : "\"lead@to\"") + at.suffix().str();
    std::smatch place;
    static const std::regex volts("ed on \"([^\"]+)\", black on \"([^\"]+)\"");
    if (std::regex_search(question, place, volts))
      return std::to_string(volts_at(place[1]) - volts_at(place[2]));
    EXPECT_NE(question.find("lamp round"), std::string::npos) << question;
    return "100";
  }

  /// The answer's change made to `system`, as the program does with the file.
  void apply(const diagnose::TraceChange& change) {
    if (const auto* reading = std::get_if<netlist::Reading>(&change)) system.readings.push_back(*reading);
    if (std::holds_alternative<diagnose::TakeBack>(change)) system.readings.pop_back();
    if (const auto* seen = std::get_if<diagnose::SeenOn>(&change))
      for (netlist::Joint& joint : system.joints)
        if (joint.id == seen->element) joint.resistances.seen = seen->seen;
  }

  /// Answers one question by the truth and applies it.
  diagnose::Answered take(diagnose::Trace& trace, units::Time now = {}) {
    diagnose::Answered answered = trace.answer(shown(trace.question(now)), now);
    if (answered.change) {
      apply(*answered.change);
      trace.update(system, now);
    }
    return answered;
  }

  [[nodiscard]] double volts_at(const std::string& point) const {
    if (point == "-") return 0;
    if (point == "+") return 12.36;
    if (point == "lead@from") return 12.355;
    if (point == "lead@to") return 12.305;
    const int place = std::stoi(point.substr(1));
    double volts = 12.3;
    for (int k = 0; k < place; ++k) volts -= k == bad_ ? 0.4 : 0.02;
    return volts;
  }

 private:
  [[nodiscard]] netlist::System parsed() const {
    std::string row;
    for (int k = 0; k < joints; ++k)
      row += std::string(k == 0 ? "" : ",") + R"({"id":"j)" + std::to_string(k) + R"(","from":")" + point(k) +
             R"(","to":")" + point(k + 1) + R"(","kind":"stud","sound":"0.2 mohm"})";
    const auto read = netlist::read(
        R"({"ohmtrail":1,"system":{"name":"row","nominal":12},
        "batteries":[{"id":"B","plus":"+","minus":"-","nominal":12,"emf":12.76,"resistance":"4 mohm"}],
        "runs":[{"id":"lead","from":"+","to":"p0","gauge":"1/0 AWG","length":1.4,"sound":"0.5 mohm",
                 "ends":{"from":{"sound":"0.05 mohm"},"to":{"sound":"0.05 mohm"}}}],
        "joints":[)" +
        row + R"(],"loads":[{"id":"motor","plus":"p8","minus":"-","takes":"100 A")" + load_keys_ +
        R"(}],"cases":[{"name":"running","on":["motor"]},{"name":"at rest"}],
        "meters":[{"id":"m","volts":{"percent":0.1,"counts":1,"digits_to":0.001},
                   "amps":{"percent":1,"counts":1,"digits_to":0.1}}]})");
    EXPECT_TRUE(read) << (read ? "" : netlist::format(read.error().front(), "rig"));
    return read->system;
  }
  static std::string point(int k) { return "p" + std::to_string(k); }

  int bad_;
  std::string load_keys_;
};

inline bool says(const std::vector<std::string>& paragraphs, const std::string& words) {
  for (const std::string& one : paragraphs)
    if (one.find(words) != std::string::npos) return true;
  return false;
}

}  // namespace ohmtrail::test
