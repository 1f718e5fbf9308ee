#include <cmath>
#include <cstdint>
#include <string>

#include "fuzz/promise.hpp"
#include "ohmtrail/units/parse.hpp"
#include "ohmtrail/units/print.hpp"

// The first byte says what the field holds, the rest is what was written into it.

using namespace ohmtrail;

namespace {

constexpr int kinds = static_cast<int>(units::Kind::fraction) + 1;

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  const auto kind = static_cast<units::Kind>(data[0] % kinds);
  const std::string text(reinterpret_cast<const char*>(data) + 1, size - 1);
  const auto parsed = units::parse_si(text, kind);
  if (!parsed) {
    fuzz::promise(!parsed.error().empty(), "a refusal says why");
    return 0;
  }
  fuzz::promise(std::isfinite(*parsed), "what is taken is finite");
  fuzz::promise(units::parse_si(" " + text + " ", kind) == parsed, "blanks around it change nothing");
  const auto number = units::number_to_si(*parsed, kind);
  fuzz::promise(!number || std::isfinite(*number), "a bare number that is taken is finite");
  if (kind == units::Kind::voltage) {
    const auto back = units::parse<units::Voltage>(units::exact(*parsed) + " V");
    fuzz::promise(back && back->si() == *parsed, "an exact print reads back to the same double");
  }
  return 0;
}
