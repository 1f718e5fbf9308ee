# Installs the build into a scratch prefix, then configures, builds and runs examples/library against it.
set(prefix "${BUILD}/installed")
set(outside "${BUILD}/outside")
file(REMOVE_RECURSE "${prefix}" "${outside}")

function(run)
  execute_process(COMMAND ${ARGN} RESULT_VARIABLE code OUTPUT_VARIABLE output ERROR_VARIABLE errors)
  if(NOT code EQUAL 0)
    message(FATAL_ERROR "${ARGN} ended with ${code}:\n${output}\n${errors}")
  endif()
  set(output "${output}" PARENT_SCOPE)
endfunction()

run(${CMAKE_COMMAND} --install "${BUILD}" --prefix "${prefix}")
run(${CMAKE_COMMAND} -G Ninja -S "${SOURCE}/examples/library" -B "${outside}" -D CMAKE_BUILD_TYPE=Release
    -D CMAKE_CXX_COMPILER=${CXX} -D CMAKE_PREFIX_PATH=${prefix})
run(${CMAKE_COMMAND} --build "${outside}")
run("${outside}/worst_places" "${prefix}/share/ohmtrail/netlists/camper-12v.json")
if(NOT output MATCHES "body, seat to kitchen")
  message(FATAL_ERROR "the example did not name the planted fault:\n${output}")
endif()
run("${prefix}/bin/ohmtrail" --version)
