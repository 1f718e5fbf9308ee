#include "ohmtrail/diagnose/trace.hpp"

#include <fmt/format.h>

#include "cli/commands/commands.hpp"
#include "cli/commands/trace_file.hpp"
#include "cli/text/trace.hpp"
#include "ohmtrail/netlist/write.hpp"

namespace ohmtrail::cli {
namespace {

constexpr Option file{.name = "FILE", .sentence = "the netlist (JSON); with --start the new file"};
constexpr Option output{
    .name = "-o,--output",
    .value = "OUT",
    .sentence = "keep the readings in OUT, not in FILE; where OUT exists the search goes on there",
    .excludes = "--start"};
constexpr Option start{.name = "--start", .value = "NEW", .sentence = "begin a new file from six answers"};

/// Asks for one line. Empty at the end of the input.
std::optional<std::string> ask(const Doors& doors, const std::string& question) {
  doors.terminal.out(narrow(question));
  doors.terminal.out("> ");
  return doors.terminal.read_line();
}

/// A pipe shows no echo: what was typed belongs into the text all the same.
void echo(const Doors& doors, const std::optional<std::string>& line) {
  if (!line)
    doors.terminal.out("\n");
  else if (!doors.terminal.typed_by_hand())
    doors.terminal.out(printable_line(*line));
}

void tell(const Doors& doors, const std::vector<std::string>& paragraphs) {
  for (const std::string& one : paragraphs) doors.terminal.out(narrow(one));
}

/// Told while an answer is waited for: on a line of its own, and with the bell where somebody types.
void interrupt(const Doors& doors, const std::vector<std::string>& paragraphs) {
  doors.terminal.out(doors.terminal.typed_by_hand() ? "\a\n" : "\n");
  tell(doors, paragraphs);
}

/// The answer to what the search asks, which may have something to say before it comes.
std::optional<std::string> hear(diagnose::Trace& trace, const Doors& doors) {
  for (;;) {
    tell(doors, trace.remarks(doors.terminal.now()));
    doors.terminal.out(narrow(trace.question(doors.terminal.now())) + "> ");
    const auto patience = trace.patience(doors.terminal.now());
    if (!patience) return doors.terminal.read_line();
    Typed typed = doors.terminal.read_line_within(*patience);
    if (typed.how == Typed::How::line) return std::move(typed.text);
    if (typed.how == Typed::How::end_of_input) return std::nullopt;
    interrupt(doors, trace.lapse(doors.terminal.now()));
  }
}

void show_standing(const diagnose::Trace& trace, const Doors& doors) {
  if (const auto* standing = trace.standing())
    doors.terminal.out(standing_in_words(*standing, doors.terminal.colour()));
  tell(doors, trace.doubts());
}

/// A change counts once it was saved.
void take(diagnose::Trace& trace, const diagnose::Answered& answered, TraceFile& saved, const Doors& doors) {
  tell(doors, answered.at_once);
  if (!answered.change) return tell(doors, answered.say);
  if (const auto kept = saved.apply(*answered.change); !kept)
    return tell(doors, {"Not saved, so not counted: " + kept.error()});
  tell(doors, answered.say);
  trace.update(saved.system(), doors.terminal.now());
  show_standing(trace, doors);
}

/// Asks until told to stop.
Exit talk(TraceFile& saved, const Doors& doors) {
  diagnose::Trace trace(saved.system(), doors.terminal.now(), saved.idle());
  while (!trace.ended()) {
    const auto line = hear(trace, doors);
    echo(doors, line);
    if (!line) {
      tell(doors, trace.answer("done", doors.terminal.now()).at_once);
      tell(doors, {"The input ended. What was read is saved; the same command goes on from here."});
      return Exit::done;
    }
    take(trace, trace.answer(*line, doors.terminal.now()), saved, doors);
  }
  tell(doors, {trace.ending()});
  if (trace.standing() && trace.standing()->verdict == diagnose::Verdict::found)
    tell(doors, {fmt::format(
                    "Its figures: ohmtrail infer {0}. What it costs, and how to mend it: ohmtrail rank {0}.",
                    saved.path())});
  return Exit::done;
}

tl::expected<TraceFile, Exit> begin(const std::string& path, const Doors& doors) {
  if (doors.files.read(path)) {
    doors.complain(fmt::format("{}: is there already; go on with: ohmtrail trace {}", path, path));
    return tl::unexpected(Exit::mistake);
  }
  diagnose::StartForm form;
  while (!form.complete()) {
    const auto line = ask(doors, form.question());
    echo(doors, line);
    if (!line) {
      tell(doors, {"The input ended before the six answers; nothing was written."});
      return tl::unexpected(Exit::done);
    }
    if (const auto mistake = form.answer(*line)) tell(doors, {*mistake});
  }
  return TraceFile::create(path, netlist::to_json(form.system()), doors);
}

Exit run(const Call& call, const Doors& doors) {
  const std::string path = call.text(file), fresh = call.text(start);
  if (path.empty() == fresh.empty()) {
    doors.complain("trace needs FILE, or --start NEW");
    return Exit::mistake;
  }
  if (path == "-" || fresh == "-") {
    doors.complain("trace reads your answers from standard input: name a file");
    return Exit::mistake;
  }
  tell(doors, {"Before you start"});
  for (const std::string& one : diagnose::Trace::cautions()) doors.terminal.out(narrow(one, "  - "));
  auto saved = fresh.empty() ? TraceFile::open(path, call.text(output), doors) : begin(fresh, doors);
  if (!saved) return saved.error();
  return talk(*saved, doors);
}

}  // namespace

const Command commands::trace{
    .name = "trace",
    .summary = "guided: where to probe next, until the fault is found",
    .description =
        "Asks for one reading after the other, each where it tells most, and shows the leading suspects "
        "after each. Every reading is saved at once; stopped in whatever way, the same command goes on where "
        "it was. Type the reading (0.142, 142 mV, 142m), or: skip, back, why, seen green-corrosion, done.",
    .options = {file, output, start},
    .examples = {"ohmtrail trace boat.json", "ohmtrail trace boat.json -o found.json",
                 "ohmtrail trace --start new.json"},
    .run = run};

}  // namespace ohmtrail::cli
