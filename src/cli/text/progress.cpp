#include "cli/text/progress.hpp"

#include <chrono>

#include "cli/text/printable.hpp"
#include "cli/text/sheet.hpp"

namespace ohmtrail::cli {

ProgressLine::ProgressLine(Terminal& terminal, std::function<double()> seconds)
    : terminal_(terminal), seconds_(std::move(seconds)), last_(seconds_()) {}

void ProgressLine::tell(const std::string& text) {
  const double now = seconds_();
  if (now - last_ < 1) return;
  last_ = now;
  const std::string line = fitted(printable(text), page_columns - 1);
  if (!terminal_.errors_are_seen()) {
    terminal_.err(line + "\n");
    return;
  }
  terminal_.err("\r" + line + "\x1b[K");
  stands_ = true;
}

void ProgressLine::end() {
  if (stands_) terminal_.err("\r\x1b[K");
  stands_ = false;
}

double steady_seconds() {
  return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count();
}

}  // namespace ohmtrail::cli
