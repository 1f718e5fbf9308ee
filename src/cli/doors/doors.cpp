#include "cli/doors/doors.hpp"

#include "cli/text/printable.hpp"

namespace ohmtrail::cli {

void Doors::complain(std::string_view line) const {
  terminal.err(printable(line) + "\n");
}

}  // namespace ohmtrail::cli
