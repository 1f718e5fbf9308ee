#pragma once
#include <string>
#include <string_view>

/// Names come from files that anyone may have written.
namespace ohmtrail::render {

/// `text` as it can be shown: control characters, and the marks that turn the direction of writing for what
/// follows, become spaces or go; bytes that are not UTF-8 become U+FFFD.
[[nodiscard]] std::string clean(std::string_view text);

/// Cleaned and safe inside XML and HTML text and attributes.
[[nodiscard]] std::string escaped(std::string_view text);

}  // namespace ohmtrail::render
