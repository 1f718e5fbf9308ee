#pragma once
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "render/canvas.hpp"

namespace ohmtrail::render {

struct Column {
  std::string title;
  double share = 1;  ///< of the width
  Align align = Align::left;
};
using Rows = std::vector<std::vector<std::string>>;

enum class Tone { normal, small, alarm };

/// What a report is made of, whatever it is printed on.
class Document {
 public:
  virtual ~Document() = default;
  /// The top of the first page: what this is and, on the right, its date; below, what it is about.
  virtual void masthead(std::string_view kind, std::string_view date, std::string_view subject) = 0;
  virtual void heading(std::string_view text) = 0;
  virtual void subheading(std::string_view text, Tone tone = Tone::normal) = 0;
  virtual void paragraph(std::string_view text, Tone tone = Tone::normal) = 0;
  /// A short label and the text that belongs to it.
  virtual void entry(std::string_view label, std::string_view text) = 0;
  /// The few sentences that matter most.
  virtual void callout(const std::vector<std::string>& sentences) = 0;
  virtual void numbered(int number, std::string_view title, std::string_view text,
                        std::string_view outcome) = 0;
  virtual void table(const std::vector<Column>& columns, const Rows& rows) = 0;
  /// A table whose last column is left empty, to be written into by hand.
  virtual void form(const std::vector<Column>& columns, const Rows& rows) = 0;
  /// What `tell` tells stays on one page where it fits on one. It may be called twice.
  virtual void together(const std::function<void()>& tell) { tell(); }
  /// What follows is handed out or kept apart: on paper it begins a page.
  virtual void begin_sheet() = 0;
  /// With its heading, which never stands apart from it. An empty heading is none.
  virtual void picture(std::string_view heading, const Scene& picture) = 0;
  /// Large: on paper on a page of its own.
  virtual void full_picture(std::string_view heading, const Scene& picture) = 0;
  [[nodiscard]] virtual double width() const = 0;  ///< pt, for pictures
};

}  // namespace ohmtrail::render
