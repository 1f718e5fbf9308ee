#pragma once
#include <string>

namespace ohmtrail::render {

/// Sets the document's language and asks viewers to show its title, by an incremental update at the end of
/// `pdf` (ISO 32000-1, 7.5.6); the library that wrote it cannot. `pdf` must have a plain cross-reference
/// table; one that has not is left as it is.
void set_language(std::string& pdf, const std::string& language);

}  // namespace ohmtrail::render
