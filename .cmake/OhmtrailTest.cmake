# ohmtrail_test_program(FOLDER): every *.cpp below tests/FOLDER as one GoogleTest program, run test by test.
function(ohmtrail_test_program folder)
  file(GLOB_RECURSE sources CONFIGURE_DEPENDS "${folder}/*.cpp")
  if(NOT sources)
    return()
  endif()
  string(REPLACE "/" "_" name "${folder}")
  add_executable(${name} ${sources})
  target_include_directories(${name} PRIVATE "${PROJECT_SOURCE_DIR}/tests" "${PROJECT_SOURCE_DIR}/src")
  target_link_libraries(${name} PRIVATE
    ohmtrail_cli fmt::fmt nlohmann_json::nlohmann_json Eigen3::Eigen Boost::headers PkgConfig::pangocairo
    rapidcheck GTest::gtest GTest::gmock GTest::gtest_main ohmtrail_numeric_flags ohmtrail_warnings)
  target_compile_definitions(${name} PRIVATE
    OHMTRAIL_SOURCE_DIR="${PROJECT_SOURCE_DIR}" OHMTRAIL_PROGRAM="$<TARGET_FILE:ohmtrail>")
  # The mathematics is in the libraries: tests are compiled for a quick build.
  target_compile_options(${name} PRIVATE $<$<CONFIG:Release>:-O1>)
  add_dependencies(${name} ohmtrail)
  gtest_discover_tests(${name} TEST_PREFIX "${folder}/" DISCOVERY_TIMEOUT 120 PROPERTIES TIMEOUT 1500)
endfunction()
