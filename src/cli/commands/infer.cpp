#include "ohmtrail/diagnose/infer.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <utility>

#include "cli/commands/commands.hpp"
#include "cli/json/infer.hpp"
#include "cli/pipeline.hpp"
#include "cli/text/infer.hpp"
#include "ohmtrail/netlist/write.hpp"

namespace ohmtrail::cli {
namespace {

constexpr Option output{.name = "-o,--output",
                        .value = "FITTED",
                        .sentence = "write the netlist with the resistances found, without the readings"};

/// Of a fitted netlist, which holds one value each: what may as well be otherwise.
std::string unsettled(const diagnose::InferResult& result) {
  constexpr double settled = 0.05;
  constexpr std::size_t most = 3;
  std::vector<std::pair<double, std::string>> open;
  const auto look = [&](const auto& items) {
    for (const auto& one : items)
      if (one.informed && one.fault_probability > settled && one.fault_probability < 1 - settled)
        open.emplace_back(one.fault_probability, one.id);
  };
  look(result.elements), look(result.batteries);
  if (open.empty()) return "";
  std::stable_sort(open.begin(), open.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
  std::vector<std::string> told;
  for (std::size_t k = 0; k < std::min(most, open.size()); ++k)
    told.push_back(fmt::format("{} ({:.0f} % at fault)", open[k].second, 100 * open[k].first));
  if (open.size() > most) told.push_back(fmt::format("{} more", open.size() - most));
  return fmt::format(
      " They are those of the likeliest explanation. Not settled: {}. Judge by the survey itself.",
      fmt::join(told, ", "));
}

/// What goes into the file: only what some reading says something of.
void edit(netlist::Document& document, const diagnose::InferResult& result) {
  for (const diagnose::InferredElement& element : result.elements)
    if (element.informed)
      static_cast<void>(document.set_resistance(element.id, units::Resistance{element.resistance}));
  for (const diagnose::InferredBattery& battery : result.batteries)
    if (battery.informed) {
      static_cast<void>(document.set_resistance(battery.id, units::Resistance{battery.resistance}));
      static_cast<void>(document.set_emf(battery.id, units::Voltage{battery.emf}));
    }
  document.remove_readings();
  document.add_to_note(
      fmt::format("Resistances inferred from {} readings.{}", result.readings.size(), unsettled(result)));
}

tl::expected<void, Exit> write_fitted(const std::string& path, const std::string& input,
                                      const diagnose::InferResult& result, const Doors& doors) {
  const auto bytes = doors.files.read(input);
  auto document = netlist::Document::open(bytes ? *bytes : std::string());
  if (!document) {
    doors.complain(fmt::format("{}: cannot be read a second time to write {}", input, path));
    return tl::unexpected(Exit::mistake);
  }
  edit(*document, result);
  if (!write_output(path, document->text(), doors)) return tl::unexpected(Exit::not_written);
  return {};
}

Exit run(const Call& call, const Doors& doors) {
  const std::string path = call.text(options::file), fitted = call.text(output);
  if (!fitted.empty() && (fitted == path || path == "-")) {
    doors.complain("-o must name a file other than the input, and the input must be a file");
    return Exit::mistake;
  }
  const auto job = read_job(path, doors);
  if (!job) return job.error();
  const auto result = diagnose::infer(job->system());
  if (!result) {
    doors.complain(fmt::format("{}: {}; {}", path, result.error().text, result.error().remedy));
    return Exit::no_solution;
  }
  const network::Network network = network::build(job->system(), job->system().cases.front());
  if (!fitted.empty())
    if (const auto written = write_fitted(fitted, path, *result, doors); !written) return written.error();

  Sheet sheet(doors.terminal.colour());
  if (call.has(options::json))
    doors.terminal.out(infer_json(job->system(), *result, network));
  else if (call.has(options::csv))
    doors.terminal.out(infer_csv(*result, network));
  else
    show_inference(sheet, job->system(), network, *result);
  doors.terminal.out(sheet.text());
  return Exit::done;
}

}  // namespace

const Command commands::infer{
    .name = "infer",
    .summary = "true resistances and fault odds from the readings",
    .description =
        "Works out from the readings what each connection's resistance really is, between which values it "
        "lies, how likely each is faulty, what these readings cannot tell apart, and which readings do not "
        "fit.",
    .options = {options::file, output, options::json, options::csv},
    .examples = {"ohmtrail infer boat.json", "ohmtrail infer boat.json -o fitted.json"},
    .run = run};

}  // namespace ohmtrail::cli
