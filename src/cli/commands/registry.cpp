#include <array>

#include "cli/commands/commands.hpp"

namespace ohmtrail::cli {

std::span<const Command* const> all_commands() {
  static constexpr std::array all{
      &commands::starter,  //
      &commands::check,    //
      &commands::solve,    //
      &commands::rank,     //
      &commands::infer,    //
      &commands::next,     //
      &commands::trace,    //
      &commands::compare,  //
      &commands::size,     //
      &commands::bank,     //
      &commands::draw,     //
      &commands::report,   //
      &commands::tables,   //
      &commands::schema,   //
  };
  return all;
}

}  // namespace ohmtrail::cli
