#pragma once
#include <string>
#include <vector>

#include "render/document.hpp"

namespace ohmtrail::test {

/// A document that remembers what it was told, for tests of what a chapter says.
class RecordedDocument final : public render::Document {
 public:
  std::vector<std::string> headings, paragraphs, pictures;
  std::vector<render::Rows> tables, forms;
  int sheets = 0;

  /// Every word, in order, a line each.
  [[nodiscard]] const std::string& all() const { return all_; }

  void masthead(std::string_view kind, std::string_view date, std::string_view subject) override {
    for (const auto& part : {kind, date, subject}) add(part);
  }
  void heading(std::string_view text) override {
    headings.emplace_back(text);
    add(text);
  }
  void subheading(std::string_view text, render::Tone) override { add(text); }
  void paragraph(std::string_view text, render::Tone) override {
    paragraphs.emplace_back(text);
    add(text);
  }
  void entry(std::string_view label, std::string_view text) override {
    add(std::string(label) + ": " + std::string(text));
  }
  void callout(const std::vector<std::string>& sentences) override {
    for (const auto& sentence : sentences) add(sentence);
  }
  void numbered(int, std::string_view title, std::string_view text, std::string_view outcome) override {
    for (const auto& part : {title, text, outcome}) add(part);
  }
  void table(const std::vector<render::Column>&, const render::Rows& rows) override {
    tables.push_back(rows);
  }
  void form(const std::vector<render::Column>&, const render::Rows& rows) override { forms.push_back(rows); }
  void begin_sheet() override { ++sheets; }
  void picture(std::string_view heading, const render::Scene&) override { pictures.emplace_back(heading); }
  void full_picture(std::string_view heading, const render::Scene&) override {
    pictures.emplace_back(heading);
  }
  [[nodiscard]] double width() const override { return 500; }

 private:
  void add(std::string_view text) { all_ += std::string(text) + "\n"; }
  std::string all_;
};

}  // namespace ohmtrail::test
