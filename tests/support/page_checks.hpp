#pragma once
#include <gtest/gtest.h>

#include <string>
#include <utility>
#include <vector>

#include "render/scene.hpp"

/// What every page keeps.
namespace ohmtrail::test {

inline void expect_inside(const std::vector<render::Scene>& pages) {
  for (std::size_t k = 0; k < pages.size(); ++k)
    for (const render::Shape& shape : pages[k].shapes)
      EXPECT_TRUE((render::Box{0, 0, pages[k].width, pages[k].height}.holds(render::bounds(shape))))
          << "page " << k + 1;
}

/// No two pieces of lettering touch, those inside a symbol excepted.
inline void expect_letters_apart(const std::vector<render::Scene>& pages) {
  for (std::size_t page = 0; page < pages.size(); ++page) {
    std::vector<std::pair<render::Box, std::string>> labels;
    for (const render::Shape& shape : pages[page].shapes)
      if (const auto* text = std::get_if<render::Text>(&shape.what);
          text && shape.kind != render::Kind::symbol)
        labels.emplace_back(text->bounds.grown(-0.3), text->text);
    for (std::size_t i = 0; i < labels.size(); ++i)
      for (std::size_t k = i + 1; k < labels.size(); ++k)
        EXPECT_FALSE(labels[i].first.overlaps(labels[k].first))
            << "page " << page + 1 << ": " << labels[i].second << " / " << labels[k].second;
  }
}

/// No column is so narrow that it parts a degree sign from its C.
inline void expect_values_whole(const std::vector<render::Scene>& pages) {
  for (std::size_t page = 0; page < pages.size(); ++page)
    for (const render::Shape& shape : pages[page].shapes) {
      const auto* text = std::get_if<render::Text>(&shape.what);
      if (text == nullptr) continue;
      EXPECT_FALSE(text->text.ends_with("°") || text->text.starts_with("°") || text->text == "C")
          << "page " << page + 1 << ": " << text->text;
    }
}

}  // namespace ohmtrail::test
