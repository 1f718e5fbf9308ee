# Two sets of flags, kept apart: those that the results depend on, and those for developers.

# No fused multiply-add: the same input gives the same bytes on every processor of one kind.
add_library(ohmtrail_numeric_flags INTERFACE)
target_compile_options(ohmtrail_numeric_flags INTERFACE -ffp-contract=off)

# Linked privately, never exported.
add_library(ohmtrail_warnings INTERFACE)
target_compile_options(ohmtrail_warnings INTERFACE
  -Wall -Wextra -Wpedantic -Wconversion -Wshadow -Wdouble-promotion -Wnon-virtual-dtor -Wold-style-cast)
# Clang, which builds the fuzz targets only, has its own idea of a shadow.
target_compile_options(ohmtrail_warnings INTERFACE $<$<CXX_COMPILER_ID:GNU>:-Werror>)
# GCC 12 takes "text" + std::string for an overlapping copy (GCC bug 105651).
target_compile_options(ohmtrail_warnings INTERFACE $<$<CXX_COMPILER_ID:GNU>:-Wno-restrict>)

if(OHMTRAIL_SANITIZE)
  add_compile_options(-fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer)
  add_link_options(-fsanitize=address,undefined)
  add_compile_definitions(OHMTRAIL_FEW_CASES)
  # The checks that sanitizers put in make GCC 12 take <regex> and others for reading what was never written (GCC bug 105562).
  add_compile_options($<$<CXX_COMPILER_ID:GNU>:-Wno-maybe-uninitialized>)
endif()

if(OHMTRAIL_FUZZ)
  add_compile_options(-fsanitize=fuzzer-no-link)
endif()
