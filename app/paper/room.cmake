# Pages, drawings, spreadsheets and QR codes; only this room knows these libraries.
find_package(PkgConfig REQUIRED)
pkg_check_modules(PAPER REQUIRED IMPORTED_TARGET pangocairo cairo-pdf libqrencode xlsxwriter)
target_link_libraries(room_paper PRIVATE PkgConfig::PAPER)
