#include "render/pages.hpp"

#include <algorithm>

#include "render/lettering.hpp"
#include "render/sheets.hpp"
#include "render/text.hpp"
#include "render/typeset.hpp"
#include "render/words.hpp"

namespace ohmtrail::render {
namespace {

constexpr double label_width = 74;

Lettering usual_style(Tone tone) {
  switch (tone) {
    case Tone::small:
      return {7.4, false, palette::quiet};
    case Tone::alarm:
      return {9.2, true, palette::alarm};
    case Tone::normal:
      break;
  }
  return {9.2, false, palette::ink};
}

constexpr Lettering heading_style{13, true, palette::accent};

}  // namespace

Pages::Pages(Paper paper, double letters) : paper_(paper), size_(paper_size(paper)), letters_(letters) {
  new_page();
}

Lettering Pages::sized(Lettering style) const {
  style.size *= letters_;
  return style;
}

Lettering Pages::style_of(Tone tone) const {
  return sized(usual_style(tone));
}

void Pages::new_page() {
  for (Scene& sheet : waiting_) pages_.push_back(std::move(sheet));
  waiting_.clear();
  pages_.push_back({size_.width, size_.height, {}, {}, {}});
  y_ = top;
  moves_on_.reset();
}

void Pages::need(double height) {
  if (room() >= height || y_ <= top + 1) return;
  const bool after_heading = moves_on_ && moves_on_->ended == y_ && moves_on_->began > top + 1;
  if (!after_heading) return new_page();
  const Headings headings = *moves_on_;
  page() = headings.before;
  new_page();
  for (const Lay& lay : headings.lay) lay(*this);
}

/// Lays a heading, to be taken along where what follows it begins on the next page.
void Pages::lay_heading(double least_room, const Lay& lay) {
  need(least_room);
  const bool under_another = moves_on_ && moves_on_->ended == y_;
  Headings headings = under_another ? *moves_on_ : Headings{page(), y_, y_, {}};
  headings.lay.push_back(lay);
  lay(*this);
  headings.ended = y_;
  moves_on_ = std::move(headings);
}

void Pages::line(std::string text, double x, const Lettering& style) {
  write(page(), Kind::label, -1, {x, y_ + line_height(style) / 2}, std::move(text), style);
}

void Pages::rule(Colour colour, double width_) {
  draw_line(page(), Kind::furniture, -1, {{side, y_}, {side + width(), y_}}, {colour, width_, false});
}

void Pages::masthead(std::string_view kind, std::string_view date, std::string_view subject) {
  constexpr Lettering small{9.2, false, palette::quiet}, large{19, true, palette::ink};
  const Box right = write(page(), Kind::label, -1, {side + width(), y_ + 6},
                          fitted(date, small.size, false, 0.4 * width()), small, Align::right);
  write(page(), Kind::label, -1, {side, y_ + 6}, fitted(kind, small.size, false, right.x - side - 12), small);
  space(20);
  for (auto& part : wrapped(subject, large.size, true, width(), 3)) {
    line(std::move(part), side, large);
    space(large.size * 1.25);
  }
  space(6);
  rule(palette::accent, 1.6);
  space(10);
}

void Pages::heading(std::string_view text) {
  lay_heading(70, [text = std::string(text)](Pages& on) {
    const Lettering style = on.sized(heading_style);
    if (on.y_ > top + 1) on.space(11 * on.letters_);
    on.line(fitted(text, style.size, true, on.width()), side, style);
    on.space(line_height(style) + 3);
  });
}

void Pages::subheading(std::string_view text, Tone tone) {
  lay_heading(52, [text = std::string(text), tone](Pages& on) {
    const Lettering style = on.sized({9.6, true, tone == Tone::alarm ? palette::alarm : palette::ink});
    on.space(7 * on.letters_);
    for (auto& part : wrapped(typeset(text), style.size, true, on.width(), any_number_of_lines)) {
      on.line(std::move(part), side, style);
      on.space(line_height(style));
    }
  });
}

void Pages::text_block(std::string_view text, const Lettering& style, double indent) {
  for (auto& part : wrapped(typeset(text), style.size, style.bold, width() - indent, any_number_of_lines)) {
    need(line_height(style));
    line(std::move(part), side + indent, style);
    space(line_height(style));
  }
}

void Pages::paragraph(std::string_view text, Tone tone) {
  text_block(text, style_of(tone), 0);
  space(tone == Tone::small ? 2 : 3);
}

void Pages::entry(std::string_view label, std::string_view text) {
  const Lettering style = style_of(Tone::normal);
  need(line_height(style) * 2);
  line(fitted(label, style.size, false, label_width - 8), side, {style.size, false, palette::quiet});
  text_block(text, style, label_width);
}

void Pages::callout(const std::vector<std::string>& sentences) {
  const Lettering style = sized({11, false, palette::ink});
  constexpr double pad = 12;
  std::vector<std::string> lines;
  for (const auto& sentence : sentences)
    for (auto& part :
         wrapped(typeset(sentence), style.size, false, width() - 2 * pad - 6, any_number_of_lines))
      lines.push_back(std::move(part));
  const double height = static_cast<double>(lines.size()) * line_height(style) + 2 * pad - 4;
  need(height);
  fill_box(page(), Kind::furniture, -1, {side, y_, width(), height}, palette::wash);
  fill_box(page(), Kind::furniture, -1, {side, y_, 3, height}, palette::accent);
  space(pad - 2);
  for (auto& part : lines) {
    line(std::move(part), side + pad + 6, style);
    space(line_height(style));
  }
  space(pad + 3);
}

void Pages::numbered(int number, std::string_view title, std::string_view text, std::string_view outcome) {
  constexpr double radius = 8, indent = 26;
  const Lettering bold = sized({10, true, palette::ink}), gain = sized({9.2, true, palette::sound});
  need(46);
  const Point middle{side + radius, y_ + line_height(bold) / 2};
  draw_circle(page(), Kind::furniture, -1, middle, radius, {palette::accent, 1, false}, palette::paper);
  write(page(), Kind::label, -1, middle, std::to_string(number), {10, true, palette::accent}, Align::middle);
  text_block(title, bold, indent);
  text_block(text, style_of(Tone::normal), indent);
  if (!outcome.empty()) text_block(outcome, gain, indent);
  space(7 * letters_);
}

void Pages::together(const std::function<void()>& tell) {
  const std::size_t pages = pages_.size();
  const Scene begun = page();
  const std::vector<Scene> waiting = waiting_;
  const double y = y_;
  tell();
  if (pages_.size() != pages + waiting.size() + 1 || !(y > top + 1)) return;
  pages_.resize(pages);
  page() = begun;
  waiting_ = waiting;
  new_page();
  tell();
}

void Pages::begin_sheet() {
  if (y_ > top + 1) new_page();
}

/// Shrinks a picture by up to a fifth where it then fits on the page that is begun.
void Pages::picture(std::string_view heading_text, const Scene& picture) {
  const double head = heading_text.empty() ? 0 : 11 + line_height(heading_style) + 3;
  const double most_height = size_.height - top - bottom - head - 8;
  double scale = std::min({1.0, width() / picture.width, most_height / picture.height});
  const double left = (room() - head - 8) / picture.height;
  if (left < scale && left >= 0.8 * scale) scale = left;
  need(picture.height * scale + head + 8);
  if (!heading_text.empty()) heading(heading_text);
  place(page(), picture, {side, y_}, scale);
  space(picture.height * scale + 6);
}

/// The text goes on where it stands; the picture follows its page, on larger paper where its letters would
/// become too small.
void Pages::full_picture(std::string_view heading_text, const Scene& picture) {
  const double head = top - 14 + line_height(heading_style);
  const PaperSize turned = sheet_for(picture, paper_, side, head + bottom - 2);
  Scene sheet{turned.width, turned.height, {}, {}, {}};
  write(sheet, Kind::label, -1, {side, head - line_height(heading_style) / 2},
        fitted(heading_text, heading_style.size, true, turned.width - 2 * side), heading_style);
  const Box box{side / 2, head + 4, turned.width - side, turned.height - bottom + 2 - head};
  const double scale = std::min(box.width / picture.width, box.height / picture.height);
  place(sheet, picture, {box.x + (box.width - picture.width * scale) / 2, box.y}, scale);
  waiting_.push_back(std::move(sheet));
}

std::vector<Scene> Pages::finish(std::string_view running) {
  constexpr Lettering small{7, false, palette::quiet};
  for (Scene& sheet : waiting_) pages_.push_back(std::move(sheet));
  waiting_.clear();
  for (std::size_t k = 0; k < pages_.size(); ++k) {
    Scene& sheet = pages_[k];
    const double y = sheet.height - bottom + 24;
    const Box number = write(sheet, Kind::furniture, -1, {sheet.width - side, y},
                             filled(text::page_of, k + 1, pages_.size()), small, Align::right);
    write(sheet, Kind::furniture, -1, {side, y}, fitted(running, small.size, false, number.x - side - 20),
          small);
  }
  return std::move(pages_);
}

}  // namespace ohmtrail::render
