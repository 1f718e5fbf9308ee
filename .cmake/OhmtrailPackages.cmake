# Everything that is found on the system; .ci/packages lists the Debian packages that hold it.
find_package(fmt REQUIRED)
find_package(nlohmann_json REQUIRED)
find_package(tl-expected REQUIRED)
find_package(Boost REQUIRED)
find_package(Eigen3 REQUIRED)
find_package(CLI11 REQUIRED)
find_package(PkgConfig REQUIRED)
pkg_check_modules(pangocairo REQUIRED IMPORTED_TARGET pangocairo cairo-svg cairo-pdf)
