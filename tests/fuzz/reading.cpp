#include <array>
#include <cmath>
#include <cstdint>
#include <string>

#include "fuzz/promise.hpp"
#include "ohmtrail/units/parse.hpp"

// The first byte says what the meter measures, the rest is the line that was typed.

using namespace ohmtrail;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  constexpr std::array kinds{units::Kind::voltage, units::Kind::current, units::Kind::resistance,
                             units::Kind::temperature};
  if (size == 0) return 0;
  const units::Kind kind = kinds[data[0] % kinds.size()];
  const std::string line(reinterpret_cast<const char*>(data) + 1, size - 1);
  const auto read = units::parse_reading_si(line, kind);
  if (read) {
    fuzz::promise(std::isfinite(*read), "a reading that is taken is finite");
    fuzz::promise(units::parse_reading_si(line + " ", kind) == read, "a blank behind it changes nothing");
  } else {
    fuzz::promise(!read.error().empty(), "a refusal says why");
  }
  const auto strict = units::parse_si(line, kind);
  fuzz::promise(!strict || (read && *strict == *read), "what a file takes, the guided session takes alike");
  return 0;
}
