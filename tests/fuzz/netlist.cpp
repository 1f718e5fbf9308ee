#include <cstdint>
#include <string>

#include "fuzz/promise.hpp"
#include "ohmtrail/netlist/read.hpp"
#include "ohmtrail/netlist/write.hpp"

// Any bytes as a netlist: taken and given back equal, or refused with a place and a reason.

using namespace ohmtrail;

namespace {

void check_problems(const std::vector<netlist::Problem>& problems, const std::string& text) {
  for (const netlist::Problem& problem : problems) {
    fuzz::promise(!problem.name.empty() && !problem.text.empty(), "a problem has a name and a text");
    const std::string line = netlist::format(problem, "f");
    fuzz::promise(line.find('\n') == std::string::npos, "a problem is one line");
    fuzz::promise(line.find('\x1b') == std::string::npos, "a problem echoes no escape");
    (void)netlist::format_with_line(problem, "f", text);
  }
}

void check_system(const netlist::ReadSystem& read, const std::string& text) {
  check_problems(read.warnings, text);
  const auto back = netlist::read(netlist::to_json(read.system));
  fuzz::promise(back.has_value(), "what is written is read");
  fuzz::promise(back->system == read.system, "what is written reads back equal");
  const auto document = netlist::Document::open(text);
  fuzz::promise(document && document->text() == text, "a document without edits keeps its bytes");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string text(reinterpret_cast<const char*>(data), size);
  const auto read = netlist::read(text);
  if (read) {
    check_system(*read, text);
  } else {
    fuzz::promise(!read.error().empty(), "a refusal says why");
    check_problems(read.error(), text);
  }
  return 0;
}
