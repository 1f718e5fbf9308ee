#pragma once
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "render/document.hpp"
#include "render/paper.hpp"

namespace ohmtrail::render {

/// A document on paper: fills pages from top to bottom; what does not fit goes onto the next. `letters`: size
/// of all lettering, 1 is the usual one.
class Pages final : public Document {
 public:
  explicit Pages(Paper paper, double letters = 1);

  void masthead(std::string_view kind, std::string_view date, std::string_view subject) override;
  void heading(std::string_view text) override;
  void subheading(std::string_view text, Tone tone = Tone::normal) override;
  void paragraph(std::string_view text, Tone tone = Tone::normal) override;
  void entry(std::string_view label, std::string_view text) override;
  void callout(const std::vector<std::string>& sentences) override;
  void numbered(int number, std::string_view title, std::string_view text, std::string_view outcome) override;
  void table(const std::vector<Column>& columns, const Rows& rows) override;
  void form(const std::vector<Column>& columns, const Rows& rows) override;
  void together(const std::function<void()>& tell) override;
  void begin_sheet() override;
  void picture(std::string_view heading, const Scene& picture) override;
  void full_picture(std::string_view heading, const Scene& picture) override;
  [[nodiscard]] double width() const override { return size_.width - 2 * side; }

  /// Pages so far, those that wait included.
  [[nodiscard]] std::size_t count() const { return pages_.size() + waiting_.size(); }
  /// How far down the last page is filled, 0 to 1.
  [[nodiscard]] double share_filled() const { return (y_ - top) / (size_.height - top - bottom); }
  /// With page numbers and `running` at the foot of each.
  [[nodiscard]] std::vector<Scene> finish(std::string_view running);

 private:
  using Cells = std::vector<std::vector<std::string>>;  ///< lines of each cell of a row

  static constexpr double side = 46, top = 36, bottom = 44;

  [[nodiscard]] Lettering sized(Lettering style) const;
  [[nodiscard]] Lettering style_of(Tone tone) const;
  void lay_table(const std::vector<Column>& columns, const Rows& rows, double least_height);

  static constexpr std::size_t any_number_of_lines = 400;

  [[nodiscard]] static double line_height(const Lettering& style) { return style.size * 1.42; }
  [[nodiscard]] double room() const { return size_.height - bottom - y_; }
  void need(double height);
  void new_page();
  using Lay = std::function<void(Pages&)>;  ///< of whatever pages: these may be moved in between
  void lay_heading(double least_room, const Lay& lay);
  void space(double height) { y_ += height; }
  void line(std::string text, double x, const Lettering& style);
  void text_block(std::string_view text, const Lettering& style, double indent);
  [[nodiscard]] std::vector<double> column_widths(const std::vector<Column>& columns) const;
  [[nodiscard]] Cells cells(const std::vector<std::string>& texts, const std::vector<double>& widths,
                            const Lettering& style) const;
  void row(const std::vector<Column>& columns, const std::vector<double>& widths, const Cells& cells,
           const Lettering& style, double least_height = 0);
  void table_head(const std::vector<Column>& columns, const std::vector<double>& widths);
  void rule(Colour colour, double width);
  Scene& page() { return pages_.back(); }

  /// Headings right under one another at the end of what is laid.
  struct Headings {
    Scene before;         ///< the page without them
    double began, ended;  ///< from where to where
    std::vector<Lay> lay;
  };

  Paper paper_;
  PaperSize size_;
  double letters_;
  std::vector<Scene> pages_;
  std::vector<Scene> waiting_;  ///< full pages that follow the one being filled
  double y_ = 0;
  std::optional<Headings> moves_on_;
};

}  // namespace ohmtrail::render
