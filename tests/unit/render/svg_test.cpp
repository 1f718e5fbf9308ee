#include "render/svg.hpp"

#include <gtest/gtest.h>

#include "render/canvas.hpp"
#include "render/diagram.hpp"
#include "render/picture.hpp"
#include "support/render_shipped.hpp"
#include "support/report_input.hpp"
#include "support/xml.hpp"

namespace ohmtrail::render {
namespace {

Scene diagram_of(const std::string& name, Show show = Show::volts) {
  const ReportInput input = test::shipped_report(name);
  return diagram(input.system, input.solved.front(), input.hot_spots, {show});
}

TEST(Svg, IsWellFormedForEveryShippedSystem) {
  for (const char* name : test::shipped_netlists) {
    const test::XmlSummary read = test::read_xml(svg(diagram_of(name), true));
    EXPECT_EQ(read.mistake, "") << name;
    EXPECT_EQ(read.count.at("svg"), 1);
    EXPECT_GT(read.count.at("text"), 30);
    EXPECT_EQ(read.count.count("script"), 0u);
    EXPECT_EQ(read.count.count("image"), 0u);
  }
}

TEST(Svg, NamesEveryRunBatteryAndLoadInATitle) {
  const netlist::System system = test::shipped("yacht-12v");
  const test::XmlSummary read = test::read_xml(svg(diagram_of("yacht-12v"), true));
  const auto told = [&](const std::string& id) {
    for (const std::string& title : read.titles)
      if (title.find(id) != std::string::npos) return true;
    return false;
  };
  for (const auto& run : system.runs) EXPECT_TRUE(told(run.id)) << run.id;
  for (const auto& battery : system.batteries) EXPECT_TRUE(told(battery.id)) << battery.id;
  for (const auto& load : system.loads) EXPECT_TRUE(told(load.id)) << load.id;
}

TEST(Svg, ShowsWhatItIsAskedToShow) {
  const auto all_texts = [](Show show) {
    std::string all;
    for (const std::string& text : test::read_xml(svg(diagram_of("yacht-12v", show), true)).texts)
      all += text + "\n";
    return all;
  };
  EXPECT_NE(all_texts(Show::gauge).find("2/0\u202FAWG · 1.40\u202Fm"), std::string::npos);
  EXPECT_NE(all_texts(Show::amps).find("\u202FA\n"), std::string::npos);
  EXPECT_NE(all_texts(Show::heat).find("\u202F°C"), std::string::npos);
  EXPECT_NE(all_texts(Show::volts).find("positive bus · 12."), std::string::npos);
}

TEST(Svg, HostileNamesStayText) {
  Scene scene{200, 50, "</title><script>", {}, {}};
  const int group = add_group(scene, "x", "\"><svg onload=alert(1)>\x1b[2J");
  write(scene, Kind::label, group, {10, 20}, "a<b>&\"c'\u202E\n", {8, false, palette::ink});
  const std::string bytes = svg(scene, true);
  const test::XmlSummary read = test::read_xml(bytes);
  EXPECT_EQ(read.mistake, "");
  EXPECT_EQ(read.count.at("svg"), 1);
  EXPECT_EQ(read.count.count("script"), 0u);
  ASSERT_EQ(read.texts.size(), 1u);
  EXPECT_EQ(read.texts[0], "a<b>&\"c' ");
  EXPECT_EQ(bytes.find('\x1b'), std::string::npos);
}

TEST(Picture, KindFollowsTheEnding) {
  EXPECT_EQ(file_kind("a/b.svg"), FileKind::svg);
  EXPECT_EQ(file_kind("B.PNG"), FileKind::png);
  EXPECT_EQ(file_kind("x.y.pdf"), FileKind::pdf);
  EXPECT_EQ(file_kind("pdf"), std::nullopt);
  EXPECT_EQ(file_kind("x.jpeg"), std::nullopt);
  EXPECT_EQ(file_kind(""), std::nullopt);
}

TEST(Picture, SameInputSameBytes) {
  for (const FileKind kind : {FileKind::svg, FileKind::png, FileKind::pdf})
    EXPECT_EQ(encode(diagram_of("launch-24v"), kind), encode(diagram_of("launch-24v"), kind));
}

TEST(Picture, BeginsAsItsKindDoes) {
  const Scene scene = diagram_of("camper-12v");
  EXPECT_TRUE(encode(scene, FileKind::png).starts_with("\x89PNG\r\n\x1a\n"));
  EXPECT_TRUE(encode(scene, FileKind::pdf).starts_with("%PDF-1."));
  EXPECT_TRUE(encode(scene, FileKind::svg).starts_with("<?xml"));
}

TEST(Picture, FitsOntoPaper) {
  const std::string bytes = encode(diagram_of("yacht-12v"), FileKind::svg, Paper::a4);
  EXPECT_NE(bytes.find("viewBox=\"0 0 841.89 595.28\""), std::string::npos);
  const std::string letter = encode(diagram_of("yacht-12v"), FileKind::svg, Paper::letter);
  EXPECT_NE(letter.find("viewBox=\"0 0 792 612\""), std::string::npos);
}

}  // namespace
}  // namespace ohmtrail::render
