#pragma once

namespace ohmtrail::cli {

/// What the program tells its caller when it ends.
enum class Exit {
  done = 0,
  limit_broken = 1,  ///< with --strict only; the complete result was printed
  mistake = 2,       ///< wrong call or wrong file; nothing was printed on standard output, nothing written
  no_solution = 3,   ///< the complete result, as far as it exists, was printed
  not_written = 4    ///< an output could not be written
};

}  // namespace ohmtrail::cli
