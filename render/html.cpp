#include <fmt/format.h>

#include "render/clean.hpp"
#include "render/report_parts.hpp"
#include "render/svg.hpp"
#include "render/text.hpp"
#include "render/typeset.hpp"
#include "render/words.hpp"

namespace ohmtrail::render {
namespace {

// Narrow screens first; tables become lists of labelled lines there, so that nothing scrolls sideways.
constexpr std::string_view style = R"(
:root{--ink:#1c2129;--quiet:#5c636e;--hair:#ccd1d6;--wash:#f4f5f6;--accent:#1c4d78;--alarm:#a32112;--sound:#216b5c}
*{box-sizing:border-box}
body{margin:0 auto;padding:20px 16px 48px;max-width:60rem;color:var(--ink);background:#fff;
font:16px/1.5 Lato,"Helvetica Neue",Arial,sans-serif;overflow-wrap:anywhere}
header{border-bottom:3px solid var(--accent);margin-bottom:16px;padding-bottom:8px}
header p{display:flex;justify-content:space-between;gap:12px;margin:0;color:var(--quiet);font-size:.9rem}
h1{font-size:1.7rem;line-height:1.2;margin:.3rem 0}
h2{font-size:1.25rem;color:var(--accent);margin:2rem 0 .6rem}
h3{font-size:1rem;margin:1.2rem 0 .2rem}
p{margin:.2rem 0 .5rem}.answer+p{margin-top:.6rem}
.small{color:var(--quiet);font-size:.85rem}.alarm{color:var(--alarm);font-weight:700}
.entry{display:grid;grid-template-columns:6.5rem 1fr;gap:.5rem}.entry>:first-child{color:var(--quiet)}
.answer{background:var(--wash);border-left:4px solid var(--accent);padding:.7rem 1rem;font-size:1.1rem}
ol{list-style:none;padding:0;margin:0}
.step{display:grid;grid-template-columns:2rem 1fr;gap:.6rem;margin-bottom:.9rem}
.number{width:1.9rem;height:1.9rem;border-radius:50%;border:2px solid var(--accent);color:var(--accent);font-weight:700;
text-align:center;line-height:1.65rem}
.gain{color:var(--sound);font-weight:700}
figure{margin:.6rem 0}
svg{display:block;width:100%;height:auto}
.wide{overflow-x:auto}.wide svg{min-width:44rem}.large svg{min-width:60rem}.small svg{max-width:27rem}
table{border-collapse:collapse;width:100%;font-size:.85rem}
th{text-align:left;color:var(--quiet);border-bottom:2px solid var(--quiet)}
td,th{padding:.3rem .5rem .3rem 0;vertical-align:top}td{border-bottom:1px solid var(--hair)}
.right{text-align:right;padding-right:1rem}
header span+span{white-space:nowrap}
@media(max-width:700px){thead{display:none}tr{display:block;border-bottom:2px solid var(--hair);padding:.4rem 0}
td{display:grid;grid-template-columns:7rem 1fr;gap:.5rem;border:0;padding:.1rem 0}.right{text-align:left}
td::before{content:attr(data-label);color:var(--quiet)}}
.form td:last-child{min-width:6rem;border-bottom:1px solid var(--ink)}
hr{border:0;border-top:3px solid var(--hair);margin:2.5rem 0 0}
@media print{body{max-width:none;font-size:11px}hr{break-before:page;border:0;margin:0}}
)";

std::string_view class_of(Tone tone) {
  switch (tone) {
    case Tone::small:
      return " class=\"small\"";
    case Tone::alarm:
      return " class=\"alarm\"";
    case Tone::normal:
      break;
  }
  return "";
}

std::string shown(std::string_view text) {
  return escaped(typeset(text));
}

class HtmlDocument final : public Document {
 public:
  explicit HtmlDocument(std::string_view title)
      : out_(fmt::format(
            "<!DOCTYPE html>\n<html lang=\"{}\">\n<head>\n<meta charset=\"utf-8\">\n"
            "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
            "<link rel=\"icon\" href=\"data:,\">\n<title>{}</title>\n<style>{}</style>\n</head>\n<body>\n",
            text::language, shown(title), style)) {}

  void masthead(std::string_view kind, std::string_view date, std::string_view subject) override {
    add("<header><p><span>{}</span><span>{}</span></p><h1>{}</h1></header>\n", shown(kind), shown(date),
        shown(subject));
  }
  void heading(std::string_view words) override { add("<h2>{}</h2>\n", shown(words)); }
  void subheading(std::string_view words, Tone tone) override {
    add("<h3{}>{}</h3>\n", class_of(tone), shown(words));
  }
  void paragraph(std::string_view words, Tone tone) override {
    add("<p{}>{}</p>\n", class_of(tone), shown(words));
  }
  void entry(std::string_view label, std::string_view words) override {
    add("<p class=\"entry\"><span>{}</span><span>{}</span></p>\n", shown(label), shown(words));
  }
  void callout(const std::vector<std::string>& sentences) override {
    out_ += "<div class=\"answer\">\n";
    for (const std::string& sentence : sentences) add("<p>{}</p>\n", shown(sentence));
    out_ += "</div>\n";
  }
  void numbered(int number, std::string_view title, std::string_view words,
                std::string_view outcome) override {
    add("<div class=\"step\"><span class=\"number\">{}</span><div><strong>{}</strong><br>{}", number,
        shown(title), shown(words));
    if (!outcome.empty()) add("<br><span class=\"gain\">{}</span>", shown(outcome));
    out_ += "</div></div>\n";
  }
  void table(const std::vector<Column>& columns, const Rows& rows) override {
    out_ += "<table>\n<thead><tr>";
    for (const Column& column : columns) add("<th{}>{}</th>", aligned(column), shown(column.title));
    out_ += "</tr></thead>\n<tbody>\n";
    for (const auto& row : rows) {
      out_ += "<tr>";
      for (std::size_t k = 0; k < columns.size(); ++k)
        add("<td{} data-label=\"{}\">{}</td>", aligned(columns[k]), shown(columns[k].title), shown(row[k]));
      out_ += "</tr>\n";
    }
    out_ += "</tbody>\n</table>\n";
  }
  void form(const std::vector<Column>& columns, const Rows& rows) override {
    out_ += "<div class=\"form\">\n";
    table(columns, rows);
    out_ += "</div>\n";
  }
  void begin_sheet() override { out_ += "<hr>\n"; }
  void picture(std::string_view words, const Scene& drawing) override {
    if (!words.empty()) heading(words);
    const bool wide = drawing.width > 1.2 * width();
    add("<figure class=\"{}\" tabindex=\"{}\">\n{}</figure>\n", wide ? "wide" : "small", wide ? 0 : -1,
        svg(drawing, false));
  }
  /// Wide drawings keep letters of a readable size on a phone: there they scroll inside their own frame.
  void full_picture(std::string_view words, const Scene& drawing) override {
    heading(words);
    add("<figure class=\"wide large\" tabindex=\"0\">\n{}</figure>\n", svg(drawing, false));
  }
  [[nodiscard]] double width() const override { return 250; }

  std::string finish() {
    out_ += "</body>\n</html>\n";
    return std::move(out_);
  }

 private:
  template <class... Args>
  void add(fmt::format_string<Args...> pattern, Args&&... args) {
    fmt::format_to(std::back_inserter(out_), pattern, std::forward<Args>(args)...);
  }

  static std::string_view aligned(const Column& column) {
    return column.align == Align::right ? " class=\"right\"" : "";
  }

  std::string out_;
};

}  // namespace

std::string report_html(const ReportInput& input) {
  HtmlDocument document(running_title(input));
  tell_report(document, input, draw_pictures(input, std::nullopt), {});
  tell_extras(document, input);
  return document.finish();
}

}  // namespace ohmtrail::render
