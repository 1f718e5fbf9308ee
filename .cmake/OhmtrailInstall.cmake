# `cmake --install` and the exported package: find_package(ohmtrail) gives ohmtrail::plan and all to its left.
include(CMakePackageConfigHelpers)
set(package_dir ${CMAKE_INSTALL_LIBDIR}/cmake/ohmtrail)
install(TARGETS ohmtrail_units ohmtrail_trade ohmtrail_netlist ohmtrail_network ohmtrail_solve ohmtrail_diagnose
                ohmtrail_plan
        EXPORT ohmtrail ARCHIVE DESTINATION ${CMAKE_INSTALL_LIBDIR})
install(TARGETS ohmtrail RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR})
install(DIRECTORY include/ohmtrail DESTINATION ${CMAKE_INSTALL_INCLUDEDIR})
install(DIRECTORY netlists/ DESTINATION ${CMAKE_INSTALL_DATADIR}/ohmtrail/netlists)
install(EXPORT ohmtrail NAMESPACE ohmtrail:: FILE ohmtrail-targets.cmake DESTINATION ${package_dir})
configure_package_config_file(.cmake/ohmtrail-config.cmake.in ohmtrail-config.cmake INSTALL_DESTINATION ${package_dir})
write_basic_package_version_file(ohmtrail-config-version.cmake COMPATIBILITY SameMinorVersion)
install(FILES ${CMAKE_CURRENT_BINARY_DIR}/ohmtrail-config.cmake
              ${CMAKE_CURRENT_BINARY_DIR}/ohmtrail-config-version.cmake
        DESTINATION ${package_dir})
