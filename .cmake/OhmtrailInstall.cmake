# `cmake --install` and the exported package: find_package(ohmtrail) gives ohmtrail::plan and all to its left.
include(CMakePackageConfigHelpers)
set(package_dir ${CMAKE_INSTALL_LIBDIR}/cmake/ohmtrail)
set(CMAKE_INSTALL_DEFAULT_COMPONENT_NAME library)
install(TARGETS ohmtrail_units ohmtrail_trade ohmtrail_netlist ohmtrail_network ohmtrail_solve ohmtrail_diagnose
                ohmtrail_plan
        EXPORT ohmtrail ARCHIVE DESTINATION ${CMAKE_INSTALL_LIBDIR})
install(DIRECTORY include/ohmtrail DESTINATION ${CMAKE_INSTALL_INCLUDEDIR})
install(EXPORT ohmtrail NAMESPACE ohmtrail:: FILE ohmtrail-targets.cmake DESTINATION ${package_dir})
configure_package_config_file(.cmake/ohmtrail-config.cmake.in ohmtrail-config.cmake INSTALL_DESTINATION ${package_dir})
write_basic_package_version_file(ohmtrail-config-version.cmake COMPATIBILITY SameMinorVersion)
install(FILES ${CMAKE_CURRENT_BINARY_DIR}/ohmtrail-config.cmake
              ${CMAKE_CURRENT_BINARY_DIR}/ohmtrail-config-version.cmake
        DESTINATION ${package_dir})

# What a user of the program needs; the Debian package holds this and no more.
install(TARGETS ohmtrail RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR} COMPONENT program)
install(DIRECTORY netlists/ DESTINATION ${CMAKE_INSTALL_DATADIR}/ohmtrail/netlists COMPONENT program)
install(FILES ${PROJECT_BINARY_DIR}/ohmtrail.1 DESTINATION ${CMAKE_INSTALL_MANDIR}/man1 COMPONENT program)
install(FILES ${PROJECT_BINARY_DIR}/ohmtrail.bash DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions
        RENAME ohmtrail COMPONENT program)
