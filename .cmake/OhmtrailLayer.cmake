# ohmtrail_layer(NAME [LINKS target...] [PRIVATE_LINKS target...])
# One library a layer: every source of src/NAME. LINKS are the layers to its left and what its headers need;
# PRIVATE_LINKS are packages that only its sources need.
function(ohmtrail_layer name)
  cmake_parse_arguments(arg "" "DIRECTORY" "LINKS;PRIVATE_LINKS" ${ARGN})
  if(NOT arg_DIRECTORY)
    set(arg_DIRECTORY "${PROJECT_SOURCE_DIR}/src/${name}")
  endif()
  file(GLOB_RECURSE sources CONFIGURE_DEPENDS "${arg_DIRECTORY}/*.cpp")
  add_library(ohmtrail_${name} STATIC ${sources})
  add_library(ohmtrail::${name} ALIAS ohmtrail_${name})
  set_target_properties(ohmtrail_${name} PROPERTIES EXPORT_NAME ${name} POSITION_INDEPENDENT_CODE ON)
  target_compile_features(ohmtrail_${name} PUBLIC cxx_std_20)
  target_include_directories(ohmtrail_${name}
    PUBLIC $<BUILD_INTERFACE:${PROJECT_SOURCE_DIR}/include> $<INSTALL_INTERFACE:${CMAKE_INSTALL_INCLUDEDIR}>
    PRIVATE "${PROJECT_SOURCE_DIR}/src")
  target_link_libraries(ohmtrail_${name}
    PUBLIC ${arg_LINKS}
    PRIVATE ${arg_PRIVATE_LINKS} $<BUILD_INTERFACE:ohmtrail_numeric_flags> $<BUILD_INTERFACE:ohmtrail_warnings>)
endfunction()
