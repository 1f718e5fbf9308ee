#pragma once
#include <string>
#include <vector>

#include "render/scene.hpp"

namespace ohmtrail::render {

/// The pages as a PDF: text selectable, fonts embedded, title and language set; the same pages give the same
/// bytes. There must be at least one page.
[[nodiscard]] std::string pdf(const std::vector<Scene>& pages, const std::string& title,
                              const std::string& subject = {});

}  // namespace ohmtrail::render
